using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Keeps clients' stored plans up to what is known of them.</summary>
public static class ReorderPlanStore
{
    /// <summary>Clients of the practice that are to be planned for: neither gone nor folded into another.</summary>
    public static IQueryable<Client> ClientsToPlan(ClinicDb db) =>
        db.Clients.AsNoTracking().Where(c => c.LeftOn == null && c.MergedIntoId == null && c.ErasedAt == null);

    /// <summary>Calculates these clients' plans anew and saves them; whoever has none any more loses theirs.</summary>
    /// <remarks>
    /// One at a time in a practice: a recalculation and what changed meanwhile may ask for the same client, and the later must see what
    /// the earlier stored.
    /// </remarks>
    /// <returns>The cases, by client, of those who have one.</returns>
    public static async Task<Dictionary<Guid, (ClientReorderInput Case, ReorderOutlook Outlook)>> RecalculateAsync(
        ClinicDb db,
        ReorderFacts book,
        IReadOnlyCollection<Guid> clientIds,
        Instant now,
        CancellationToken cancellation
    )
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        // Its turn comes when it comes; how long the whole may take is for whoever asks.
        var usual = db.Database.GetCommandTimeout();
        db.Database.SetCommandTimeout(0);
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock(hashtextextended({"plans " + db.PracticeId}, 0))", cancellation);
        db.Database.SetCommandTimeout(usual);
        var planned = await WriteAsync(db, book, clientIds, now, cancellation);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return planned;
    }

    private static async Task<Dictionary<Guid, (ClientReorderInput Case, ReorderOutlook Outlook)>> WriteAsync(
        ClinicDb db,
        ReorderFacts book,
        IReadOnlyCollection<Guid> clientIds,
        Instant now,
        CancellationToken cancellation
    )
    {
        var ids = clientIds.ToList();
        var rows = await ClientsToPlan(db)
            .Where(c => ids.Contains(c.Id))
            .Select(c => new { c.Id, c.HomeSalonId })
            .ToListAsync(cancellation);
        var days = book.Salons.Values.ToDictionary(s => s.Id, s => s.DayOf(now));
        var clients = await ClientUnits.LoadAsync(
            db,
            book.Kinds,
            [.. rows.Select(r => (r.Id, r.HomeSalonId, days[r.HomeSalonId]))],
            cancellation
        );
        var stored = await db.ReorderPlans.Where(p => ids.Contains(p.ClientId)).ToDictionaryAsync(p => p.ClientId, cancellation);
        // The tables are made on first use: cases come one after another, and only the sums are shared out.
        var cases = clients.Select(book.PrepareReorder).OfType<ClientReorderInput>().ToList();
        var outlooks = new ReorderOutlook[cases.Count];
        Parallel.For(
            0,
            cases.Count,
            () => new ReorderRule(LeadTimeForecasts.DaysInSight),
            (i, _, rule) =>
            {
                outlooks[i] = cases[i].Outlook(rule);
                return rule;
            },
            _ => { }
        );
        var planned = new Dictionary<Guid, (ClientReorderInput, ReorderOutlook)>();
        for (var i = 0; i < cases.Count; i++)
        {
            if (!stored.Remove(cases[i].ClientId, out var plan))
            {
                plan = new ReorderPlan(Guid.CreateVersion7(), cases[i].ClientId);
                db.ReorderPlans.Add(plan);
            }
            plan.Store(outlooks[i]);
            planned[cases[i].ClientId] = (cases[i], outlooks[i]);
        }
        db.ReorderPlans.RemoveRange(stored.Values);
        return planned;
    }
}
