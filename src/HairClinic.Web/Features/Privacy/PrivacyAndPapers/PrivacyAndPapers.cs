using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Privacy;

/// <summary>What a client agreed to and took back, and the ways to their papers. A line is never changed: taking back is a line of its own.</summary>
public sealed class PrivacyAndPapers(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, ConsentStore book, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await (
            from c in db.Clients.AsNoTracking().UnmergedById(clientId)
            join salon in db.Salons on c.HomeSalonId equals salon.Id
            select new
            {
                c.Name,
                c.Code,
                c.ErasedAt,
                c.HomeSalonId,
                salon.Zone,
            }
        ).SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        var now = clock.GetCurrentInstant();
        var language = await LanguageAsync(db, cancellation);
        var lines = await ConsentStore.LedgerAsync(db, clientId, cancellation);
        var words = await book.CurrentTextsAsync(db, language, cancellation);
        var ledger = lines.Select(l => l.Consent).ToList();
        var zone = DateTimeZoneProviders.Tzdb[client.Zone];
        return new Screen(
            client.Name,
            client.Code,
            client.ErasedAt is not null,
            StaffPermissions.MayManageClient(current.Person, client.HomeSalonId),
            zone,
            [
                .. words
                    .Select(w => new Standing(w.Subject, ConsentValidityRule.Last(ledger, w.Subject, now), w.Number, w.Words))
                    .Where(s => s.Subject.IsAsked() || s.Last is { Given: true }),
            ],
            lines
        );
    }

    /// <exception cref="Refusal">The client is not there or was erased, or the words were changed meanwhile, or it is a consent to what is not done.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(PrivacyAndPapers),
            input,
            async db =>
            {
                if (!await db.Clients.UnmergedById(input.ClientId).AnyAsync(cancellation))
                    throw new Refusal("This client is not there any more. They may have been merged with another record.");
                if (input.Given && !input.Subject!.Value.IsAsked())
                    throw new Refusal("Nobody is sent reminders, so this is not asked.");
                var shown = (await LanguageAsync(db, cancellation), input.TextNumber);
                var consent = await book.AddAsync(
                    db,
                    key,
                    input.ClientId,
                    input.Subject!.Value,
                    input.Given,
                    shown,
                    current.Person.PersonId,
                    input.Way!.Value,
                    cancellation
                );
                return new Outcome(consent.Id);
            },
            cancellation
        );

    private static Task<string> LanguageAsync(ClinicDb db, CancellationToken cancellation) =>
        db.PracticeSettings.AsNoTracking().Select(s => s.Culture).SingleAsync(cancellation);

    /// <param name="Last">The last word on it; null: never asked.</param>
    /// <param name="TextNumber">Of the words in force.</param>
    public sealed record Standing(ConsentSubject Subject, Consent? Last, int TextNumber, string Words);

    /// <param name="AtHome">Theirs to erase.</param>
    public sealed record Screen(
        string Name,
        string Code,
        bool Erased,
        bool AtHome,
        DateTimeZone Zone,
        IReadOnlyList<Standing> Standing,
        IReadOnlyList<ConsentStore.Line> History
    );

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public ConsentSubject? Subject { get; set; }
        public bool Given { get; set; }
        public ConsentWay? Way { get; set; }
        public int TextNumber { get; set; }
    }

    public sealed record Outcome(Guid ConsentId);
}
