namespace HairClinic.Web.Data.Work;

/// <summary>Hands out work so that two programs on one database never do the same.</summary>
public static class WorkQueue
{
    /// <summary>How much of each kind is due and not claimed.</summary>
    public static Task<Dictionary<WorkKind, int>> CountDueAsync(ClinicDb db, Instant now, CancellationToken cancellation) =>
        db
            .WorkItems.Where(w => w.DoneAt == null && w.NotBefore <= now && (w.HeldUntil == null || w.HeldUntil <= now))
            .GroupBy(w => w.Kind)
            .Select(g => new { g.Key, Count = g.Count() })
            .ToDictionaryAsync(g => g.Key, g => g.Count, cancellation);

    /// <summary>What is due and not claimed, the longest due first, locked until the transaction ends.</summary>
    public static Task<List<WorkItem>> LockDueAsync(
        ClinicDb db,
        IEnumerable<WorkKind> kinds,
        int most,
        Instant now,
        CancellationToken cancellation
    ) =>
        db
            .WorkItems.FromSql(
                $"""
                select *, xmin from work_items
                where done_at is null and not_before <= {now} and practice_id = {db.PracticeId}
                    and kind = any({kinds.Select(k => k.ToString()).ToArray()}) and (held_until is null or held_until <= {now})
                order by not_before, id limit {most} for update skip locked
                """
            )
            .AsTracking()
            .ToListAsync(cancellation);
}
