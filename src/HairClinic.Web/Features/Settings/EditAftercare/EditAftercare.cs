using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>The practice's own words on aftercare, which its clients read on their own page in place of the usual ones.</summary>
public sealed class EditAftercare(ClinicDbFactory databases, WriteOnce writes)
{
    /// <param name="language">Two letters.</param>
    /// <returns>Every topic: the practice's own words where it wrote some.</returns>
    public async Task<IReadOnlyList<Topic>> OpenAsync(string language, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var own = await db
            .OwnTexts.AsNoTracking()
            .Where(t => t.Language == language && t.Text != "")
            .ToDictionaryAsync(t => t.Topic, cancellation);
        return
        [
            .. Enum.GetValues<CareTopic>()
                .Select(t => new Topic(t, own.GetValueOrDefault(t)?.Text, own.GetValueOrDefault(t)?.Version ?? 0)),
        ];
    }

    /// <summary>Saves the words of one topic; none brings the usual ones back.</summary>
    /// <exception cref="OvertakenException">Somebody else wrote this topic since it was opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(
                key,
                nameof(EditAftercare),
                input,
                async db =>
                {
                    var own = await db.OwnTexts.SingleOrDefaultAsync(
                        t => t.Topic == input.Topic && t.Language == input.Language,
                        cancellation
                    );
                    var words = input.Words.Trim();
                    if (own is null && input.Version != 0)
                        throw new DbUpdateConcurrencyException();
                    if (own is null && words.Length > 0)
                        db.OwnTexts.Add(new OwnText(key, input.Topic!.Value, input.Language, words));
                    if (own is not null)
                    {
                        WriteOnce.ExpectVersion(db, own, input.Version);
                        if (words.Length == 0)
                            db.OwnTexts.Remove(own);
                        else
                            own.SetText(words);
                    }
                    return new Outcome(words.Length > 0);
                },
                cancellation
            );
        }
        catch (DbUpdateException e) when (ConcurrentEdits.IsUniqueViolation(e, "own_texts"))
        {
            throw new OvertakenException(e);
        }
    }

    /// <param name="Own">Null: the usual words hold.</param>
    /// <param name="Version">Of the practice's own; 0 where there are none.</param>
    public sealed record Topic(CareTopic About, string? Own, uint Version);

    public sealed record Input
    {
        [FormOnly]
        public CareTopic? Topic { get; set; }

        /// <summary>Two letters.</summary>
        [FormOnly]
        public string Language { get; set; } = "";

        [FromDatabase]
        public uint Version { get; set; }

        /// <summary>Empty: the usual ones again.</summary>
        [Field("In your own words")]
        public string Words { get; set; } = "";
    }

    public sealed record Outcome(bool Own);
}
