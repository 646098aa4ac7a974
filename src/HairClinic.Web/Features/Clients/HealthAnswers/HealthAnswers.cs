using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>What a client tells of their health. Sealed with their own key; nothing of it is shown or kept without a line in the access log.</summary>
public sealed class HealthAnswers(
    ClinicDbFactory databases,
    WriteOnce writes,
    SealedDraftStore drafts,
    Sealer sealer,
    MasterKeys masters,
    AccessLogStore log,
    CurrentActor current,
    IClock clock
)
{
    /// <summary>Whether there is such a client for whoever asks. Reads nothing of what they confided.</summary>
    public async Task<bool> MayOpenAsync(Guid clientId, CancellationToken cancellation)
    {
        if (!StaffPermissions.MayReadHealth(current.Person))
            return false;
        await using var db = databases.Open();
        return await db.Clients.UnmergedById(clientId).AnyAsync(cancellation);
    }

    /// <returns>Null: not there, not theirs, or not for their eyes.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        if (!StaffPermissions.MayReadHealth(current.Person))
            return null;
        await using var db = databases.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var client = await db.Clients.UnmergedById(clientId).Headings(db).SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        await log.NoteAsync(db, AccessAction.OpenedHealth, clientId, cancellation: cancellation);
        var saves = await SavesOf(db, clientId).ToListAsync(cancellation);
        var products = await db
            .Products.AsNoTracking()
            .OrderBy(p => p.Name)
            .Select(p => new ProductChoice(p.Id, p.Name))
            .ToListAsync(cancellation);
        var (latest, erased) = saves is [var newest, ..] ? await ReadAsync(db, newest.Id, cancellation) : (null, false);
        var draft = erased ? null : await drafts.FindAsync<Input>(db, nameof(HealthAnswers), clientId, cancellation);
        await transaction.CommitAsync(cancellation);
        return new Screen(client.Name, client.Code, clock.Today(client.Zone), latest, draft, erased, saves, products);
    }

    /// <summary>Keeps what was typed so far, sealed.</summary>
    public Task KeepDraftAsync(Input input, CancellationToken cancellation) =>
        drafts.StoreAsync(nameof(HealthAnswers), input.ClientId, input, cancellation);

    /// <exception cref="Refusal">The client is not there or not theirs, or what they confided was erased.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        // What is kept to know a second tap again is a keyed digest: the answers themselves stand nowhere but sealed.
        writes.RunAsync(key, nameof(HealthAnswers), Digest(input), db => WriteAsync(db, key, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        if (!StaffPermissions.MayReadHealth(current.Person))
            throw new Refusal("Health answers are for the owner, managers and stylists.");
        await db.Database.BeginTransactionAsync(cancellation);
        var zone = await db.RequireZoneAsync(input.ClientId, cancellation);
        await log.NoteAsync(db, AccessAction.SavedHealth, input.ClientId, key, cancellation: cancellation);
        var today = clock.Today(zone);
        var plain = JsonSerializer.SerializeToUtf8Bytes(input.History, JsonColumns.Options);
        var closed = await sealer.SealAsync(db, input.ClientId, HealthAnswer.Purpose, key, plain, cancellation);
        CryptographicOperations.ZeroMemory(plain);
        db.HealthAnswers.Add(new HealthAnswer(key, input.ClientId, today, current.Person.PersonId, clock.GetCurrentInstant(), closed));
        var facts = ClearanceRules.ClearancesFor(input.History, today);
        await ClearanceStore.ReplaceAsync(db, input.ClientId, key, facts, cancellation);
        await drafts.DeleteAsync(db, nameof(HealthAnswers), input.ClientId, cancellation);
        return new Outcome(facts.Count);
    }

    // Those of records merged into this one count too: a newer save anywhere is what is known.
    private static IQueryable<Save> SavesOf(ClinicDb db, Guid clientId) =>
        from answer in db.HealthAnswers
        where answer.ClientId == clientId || db.Clients.Any(c => c.Id == answer.ClientId && c.MergedIntoId == clientId)
        join person in db.People on answer.AnsweredBy equals person.Id into people
        from person in people.DefaultIfEmpty()
        orderby answer.SavedAt descending, answer.Id descending
        select new Save(answer.Id, answer.AnsweredOn, person == null ? null : person.Name);

    private async Task<(HealthHistory? Latest, bool Erased)> ReadAsync(ClinicDb db, Guid answerId, CancellationToken cancellation)
    {
        var row = await db.HealthAnswers.AsNoTracking().SingleAsync(a => a.Id == answerId, cancellation);
        var opened = await sealer.OpenAsync(db, row.ClientId, HealthAnswer.Purpose, row.Id, row.Closed, cancellation);
        if (opened.Bytes is not { } plain)
            return (null, true);
        var history = JsonSerializer.Deserialize<HealthHistory>(plain, JsonColumns.Options);
        CryptographicOperations.ZeroMemory(plain);
        return (history, false);
    }

    private Sent Digest(Input input)
    {
        // The oldest key, so that a retry after a rotation reads the same.
        var key = masters.All[0].DeriveKey("write keys");
        var plain = JsonSerializer.SerializeToUtf8Bytes(input, JsonColumns.Options);
        var digest = HMACSHA256.HashData(key, plain);
        CryptographicOperations.ZeroMemory(key);
        CryptographicOperations.ZeroMemory(plain);
        return new Sent(digest);
    }

    /// <param name="Latest">Null when nothing was asked yet, or what was answered is erased.</param>
    /// <param name="Saves">When it was asked and by whom, newest first.</param>
    public sealed record Screen(
        string Name,
        string Code,
        LocalDate Today,
        HealthHistory? Latest,
        Input? Draft,
        bool Erased,
        IReadOnlyList<Save> Saves,
        IReadOnlyList<ProductChoice> Products
    );

    public sealed record Save(Guid Id, LocalDate On, string? By);

    public sealed record ProductChoice(Guid Id, string Name);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public HealthHistory History { get; set; } = new();
    }

    /// <param name="Clearances">How many clearances the answers gave. Kept with the write, so it says nothing else.</param>
    public sealed record Outcome(int Clearances);

    private sealed record Sent(byte[] Digest);
}
