using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Data.Sql;
using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Privacy;

/// <summary>Takes out of the book what tells who a client was, in one transaction, and leaves what the law needs under a pseudonym.</summary>
public sealed class ClientEraser(Sealer sealer, AccessLogStore log, LetterFolder letters, IClock clock)
{
    /// <summary>How many rows each step would touch. Nothing is changed.</summary>
    public async Task<IReadOnlyDictionary<string, int>> CountAsync(ClinicDb db, ErasureSubject person, CancellationToken cancellation)
    {
        // One question for all of them: some seventy round trips would be most of the page's time.
        var steps = ErasureStep.Plan(db.Model);
        var all = $"select array[{string.Join(",\n", steps.Select(s => $"({s.Count})"))}] as \"Value\"";
        var rows = await db.Database.SqlQueryRaw<int[]>(all, Arguments(db, person)).SingleAsync(cancellation);
        return steps.Zip(rows).Where(s => s.Second > 0).ToDictionary(s => s.First.Key, s => s.Second);
    }

    /// <param name="id">Of the row that records it; sent again, it gives the first answer.</param>
    /// <param name="expected">What the person who confirmed was shown; null for a rule of the practice.</param>
    /// <exception cref="Refusal">Not there, in the chair today, erased already, or no longer what was shown. Nothing was changed.</exception>
    public async Task<IReadOnlyDictionary<string, int>> EraseAsync(
        ClinicDb db,
        Guid id,
        Guid clientId,
        IReadOnlyDictionary<string, int>? expected,
        CancellationToken cancellation
    )
    {
        try
        {
            return await SlotSaveErrors.RetryOnDeadlockAsync(() => TryAsync(db, id, clientId, expected, cancellation));
        }
        catch (Exception e) when (HomeSalonRules.Violates(e, HomeSalonRules.AtHome))
        {
            // Another salon's by now, or all along: as if it were not there.
            throw Gone();
        }
    }

    private async Task<IReadOnlyDictionary<string, int>> TryAsync(
        ClinicDb db,
        Guid id,
        Guid clientId,
        IReadOnlyDictionary<string, int>? expected,
        CancellationToken cancellation
    )
    {
        db.ChangeTracker.Clear();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var first = await ErasureSubject.FindAsync(db, clientId, cancellation) ?? throw Gone();
        // Writes under way on them end first; new ones wait, and then find them erased.
        await db.Database.ExecuteSqlRawAsync("select from clients where id = any({0}) order by id for update", [first.Ids], cancellation);
        if (await db.Erasures.AsNoTracking().SingleOrDefaultAsync(e => e.Id == id, cancellation) is { } done)
            return done.Counts;
        var person = await ErasureSubject.FindAsync(db, clientId, cancellation) ?? throw Gone();
        if (person.Kept.ErasedAt is not null)
            throw new Refusal("This client was erased already.");
        if (!person.Ids.SequenceEqual(first.Ids))
            throw Changed();
        await RefuseInChairAsync(db, person, cancellation);
        await log.NoteAsync(db, AccessAction.ErasedClient, person.Kept.Id, id, cancellation: cancellation);
        // If the program dies between here and the files, the next one does the work: without its key no file opens anyway.
        var files = await db.Photos.Where(p => person.Ids.Contains(p.ClientId)).Select(p => p.FileId).ToListAsync(cancellation);
        var addresses = await AddressesAsync(db, person, cancellation);
        var counts = await CarryOutAsync(db, person, cancellation);
        if (expected is not null && !Same(expected, counts))
            throw Changed();
        foreach (var client in person.Ids)
            await sealer.DestroyKeyAsync(db, client, cancellation);
        if (files.Count > 0)
            db.WorkItems.Add(WorkItemFactory.RemoveFiles(files, clock.GetCurrentInstant()));
        db.Erasures.Add(new Erasure(id, person.Kept.Id, clock.GetCurrentInstant(), db.Actor?.Id, ErasureExemptions.Version, counts));
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        letters.RemoveLettersTo(addresses);
        return counts;
    }

    // Their own, those they had before, and of those who read for them: a letter with a link lies where no mail server is set.
    private static async Task<IReadOnlyCollection<string>> AddressesAsync(
        ClinicDb db,
        ErasureSubject person,
        CancellationToken cancellation
    ) =>
        await db
            .Clients.Where(c => person.Ids.Contains(c.Id) && c.Email != null)
            .Select(c => c.Email!)
            .Union(db.Guardians.Where(g => person.Ids.Contains(g.ClientId)).Select(g => g.Email))
            .Union(db.OpeningAddresses.Where(a => person.Ids.Contains(a.ClientId)).Select(a => a.Email))
            .ToListAsync(cancellation);

    private async Task<Dictionary<string, int>> CarryOutAsync(ClinicDb db, ErasureSubject person, CancellationToken cancellation)
    {
        var counts = new Dictionary<string, int>();
        foreach (var step in ErasureStep.Plan(db.Model))
        {
            var rows = await db.Database.ExecuteSqlRawAsync(step.Sql, Arguments(db, person), cancellation);
            if (rows > 0)
                counts[step.Key] = rows;
        }
        return counts;
    }

    /// <exception cref="Refusal">They are here.</exception>
    public async Task RefuseInChairAsync(ClinicDb db, ErasureSubject person, CancellationToken cancellation)
    {
        var yesterday = clock.GetCurrentInstant() - Duration.FromHours(24);
        if (
            await db.Visits.AnyAsync(
                v =>
                    person.Ids.Contains(v.ClientId)
                    && (v.State == VisitState.Arrived || v.State == VisitState.InChair)
                    && v.StartsAt > yesterday,
                cancellation
            )
        )
            throw new Refusal("This client is in the salon today. Finish the visit first.");
    }

    private object[] Arguments(ClinicDb db, ErasureSubject person) =>
        [person.Ids, db.PracticeId, person.Needles, clock.GetCurrentInstant()];

    private static bool Same(IReadOnlyDictionary<string, int> a, Dictionary<string, int> b) =>
        a.Count == b.Count && a.All(x => b.TryGetValue(x.Key, out var rows) && rows == x.Value);

    private static Refusal Gone() => new("This client is not there any more. They may have been merged with another record.");

    private static Refusal Changed() => new("Something was written on this client meanwhile. Nothing was erased; look at the list again.");
}
