using HairClinic.Web.Data;
using HairClinic.Web.Language;

namespace HairClinic.Web.Privacy;

/// <summary>A client's consents, for whoever shows or takes them: the staff's page and the client's own.</summary>
public sealed class ConsentStore(IClock clock)
{
    /// <summary>Every line, newest first, those of records folded into this one included: they were the same person's.</summary>
    public static async Task<IReadOnlyList<Line>> LedgerAsync(ClinicDb db, Guid clientId, CancellationToken cancellation) =>
        await (
            from consent in db.Consents.AsNoTracking()
            join text in db.ConsentTexts on consent.TextId equals text.Id
            where consent.ClientId == clientId || db.Clients.Any(c => c.Id == consent.ClientId && c.MergedIntoId == clientId)
            orderby consent.At descending, consent.Id descending
            select new Line(
                consent,
                text.Number,
                text.Words,
                db.People.Where(p => p.Id == consent.TakenBy).Select(p => p.Name).FirstOrDefault()
            )
            {
                Language = text.Language,
            }
        ).ToListAsync(cancellation);

    /// <summary>The words in force for each subject. Where the practice wrote none, those the program brings, not saved yet.</summary>
    public async Task<IReadOnlyList<ConsentText>> CurrentTextsAsync(ClinicDb db, string language, CancellationToken cancellation)
    {
        var all = await db.ConsentTexts.AsNoTracking().Where(t => t.Language == language).ToListAsync(cancellation);
        return
        [
            .. Enum.GetValues<ConsentSubject>()
                .Select(s => all.Where(t => t.Subject == s).MaxBy(t => t.Number) ?? First(s, language, Guid.CreateVersion7())),
        ];
    }

    /// <summary>Adds a line under the words that were shown; the caller saves.</summary>
    /// <param name="shown">The number of the words the client had before them.</param>
    /// <param name="takenBy">Null: by the client, on their own page.</param>
    /// <exception cref="Domain.Practices.Refusal">The words were changed since.</exception>
    public async Task<Consent> AddAsync(
        ClinicDb db,
        Guid id,
        Guid clientId,
        ConsentSubject subject,
        bool given,
        (string Language, int Number) shown,
        Guid? takenBy,
        ConsentWay way,
        CancellationToken cancellation
    )
    {
        var text = await db
            .ConsentTexts.Where(t => t.Subject == subject && t.Language == shown.Language)
            .OrderByDescending(t => t.Number)
            .FirstOrDefaultAsync(cancellation);
        if (text is null)
            db.ConsentTexts.Add(text = First(subject, shown.Language, Guid.CreateVersion7()));
        if (text.Number != shown.Number)
            throw new Domain.Practices.Refusal("The words were changed meanwhile. Read the new ones to the client and ask again.");
        var consent = new Consent(id, clientId, subject, given, text.Id, clock.GetCurrentInstant(), takenBy, way);
        db.Consents.Add(consent);
        return consent;
    }

    private ConsentText First(ConsentSubject subject, string language, Guid id) =>
        new(id, subject, language, number: 1, EnumWords.InEnglish(subject, "First"), clock.GetCurrentInstant(), by: null);

    /// <param name="By">The person's name; null where the client did it.</param>
    public sealed record Line(Consent Consent, int TextNumber, string Words, string? By)
    {
        /// <summary>Of the words: a culture name.</summary>
        public string Language { get; init; } = "";
    }
}
