using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Privacy;

/// <summary>The words clients agree to. Saving makes a new edition; what was agreed to an earlier one stays agreed to that one.</summary>
public sealed class EditConsentWords(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, ConsentStore book, IClock clock)
{
    /// <param name="language">Null: the practice's own.</param>
    public async Task<Screen> OpenAsync(string? language, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var own = await db.PracticeSettings.AsNoTracking().Select(s => s.Culture).SingleAsync(cancellation);
        var known = await db.ConsentTexts.AsNoTracking().Select(t => t.Language).Distinct().ToListAsync(cancellation);
        var words = await book.CurrentTextsAsync(db, language ?? own, cancellation);
        return new Screen(
            language ?? own,
            [.. known.Append(own).Distinct().Order()],
            [.. words.Where(w => w.Subject.IsAsked()).Select(w => new Words(w.Subject, w.Number, w.Words))]
        );
    }

    /// <exception cref="Refusal">Somebody else wrote new words meanwhile, or there are none.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(
                key,
                nameof(EditConsentWords),
                input,
                async db =>
                {
                    var before = (await book.CurrentTextsAsync(db, input.Language, cancellation)).Single(w => w.Subject == input.Subject);
                    if (before.Number != input.Number)
                        throw Meanwhile();
                    // The words the program brings become the first edition, so that a number shown before stays true.
                    if (!await db.ConsentTexts.AnyAsync(t => t.Id == before.Id, cancellation))
                        db.ConsentTexts.Add(before);
                    var made = new ConsentText(
                        key,
                        input.Subject!.Value,
                        input.Language,
                        before.Number + 1,
                        input.Words,
                        clock.GetCurrentInstant(),
                        current.Person.PersonId
                    );
                    db.ConsentTexts.Add(made);
                    return new Outcome(made.Number);
                },
                cancellation
            );
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, ConsentTextMap.NumberOnce))
        {
            throw Meanwhile();
        }
    }

    private static Refusal Meanwhile() => new("Somebody else wrote new words meanwhile. Look at them before you write over them.");

    public sealed record Words(ConsentSubject Subject, int Number, string Text);

    public sealed record Screen(string Language, IReadOnlyList<string> Languages, IReadOnlyList<Words> InForce);

    public sealed record Input
    {
        public ConsentSubject? Subject { get; set; }
        public string Language { get; set; } = "";

        /// <summary>Of the words that were on the screen.</summary>
        public int Number { get; set; }

        public string Words { get; set; } = "";
    }

    public sealed record Outcome(int Number);
}
