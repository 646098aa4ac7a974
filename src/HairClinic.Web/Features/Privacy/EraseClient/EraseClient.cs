using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Privacy;

/// <summary>Takes out what tells who a client was. What goes and what stays is shown first, and exactly that is done.</summary>
public sealed class EraseClient(ClinicDbFactory databases, CurrentActor current, ClientEraser eraser)
{
    /// <returns>Null: not there, not of a salon of theirs, or erased already.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        if (!await AtHomeAsync(clientId, cancellation))
            return null;
        await using var db = databases.OpenPracticeWide(nameof(EraseClient));
        if (await ErasureSubject.FindAsync(db, clientId, cancellation) is not { Kept.ErasedAt: null } person)
            return null;
        Refusal? refused = null;
        try
        {
            await eraser.RefuseInChairAsync(db, person, cancellation);
        }
        catch (Refusal refusal)
        {
            refused = refusal;
        }
        var counts = await eraser.CountAsync(db, person, cancellation);
        return new Screen(person.Kept.Id, person.Kept.Name, person.Kept.Code, person.Ids.Length - 1, counts, refused);
    }

    /// <remarks>Sent again with the same key it gives the first answer: the row that records it carries the key.</remarks>
    /// <exception cref="Refusal">Another code was typed, the client is here today, or something was written meanwhile.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        if (current.Person.StaffRole is not (StaffRole.Owner or StaffRole.Manager) || !await AtHomeAsync(input.ClientId, cancellation))
            throw new Refusal("This client is not there any more. They may have been merged with another record.");
        await using var db = databases.OpenPracticeWide(nameof(EraseClient));
        var done = await db.Erasures.AsNoTracking().SingleOrDefaultAsync(e => e.Id == key, cancellation);
        if (done is not null)
            return new Outcome(done.Counts);
        var code = await db.Clients.Where(c => c.Id == input.ClientId).Select(c => c.Code).SingleAsync(cancellation);
        if (!string.Equals(input.Code.Trim(), code, StringComparison.OrdinalIgnoreCase))
            throw new Refusal("That is not this client's code. Nothing was erased.");
        return new Outcome(await eraser.EraseAsync(db, key, input.ClientId, input.Expected, cancellation));
    }

    // What is shown and done is counted past what the manager may read; whom it is done to is a client of their own salon.
    private async Task<bool> AtHomeAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await ErasureSubject.FindAsync(db, clientId, cancellation) is { } person
            && StaffPermissions.MayManageClient(current.Person, person.Kept.HomeSalonId);
    }

    /// <param name="ClientId">The record kept, where a folded one was asked for.</param>
    /// <param name="Folded">Records of the same person that go with it.</param>
    /// <param name="Counts">What would be done, and to how many rows.</param>
    public sealed record Screen(
        Guid ClientId,
        string Name,
        string Code,
        int Folded,
        IReadOnlyDictionary<string, int> Counts,
        Refusal? Refused
    );

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public string Code { get; set; } = "";

        /// <summary>What was on the screen.</summary>
        public IReadOnlyDictionary<string, int>? Expected { get; set; }
    }

    public sealed record Outcome(IReadOnlyDictionary<string, int> Counts);
}
