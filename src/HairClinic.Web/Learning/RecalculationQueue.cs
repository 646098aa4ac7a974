using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Learning;

/// <summary>Runs that are asked for, go on, or are over. One at a time a practice: the database holds it.</summary>
public static class RecalculationQueue
{
    /// <returns>The one asked for, or the one that waits or runs already.</returns>
    public static async Task<Guid> RequestAsync(ClinicDb db, Guid? askedBy, Instant now, CancellationToken cancellation)
    {
        if (await FindUnfinishedAsync(db, cancellation) is { } running)
            return running.Id;
        var recalculation = new Recalculation(Guid.CreateVersion7(), askedBy, now);
        db.Recalculations.Add(recalculation);
        try
        {
            await db.SaveChangesAsync(cancellation);
            return recalculation.Id;
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, RecalculationMap.OneAtATime))
        {
            db.ChangeTracker.Clear();
            return (await FindUnfinishedAsync(db, cancellation))?.Id ?? recalculation.Id;
        }
    }

    public static Task<Recalculation?> FindUnfinishedAsync(ClinicDb db, CancellationToken cancellation) =>
        db.Recalculations.AsNoTracking().SingleOrDefaultAsync(r => r.EndedAt == null, cancellation);

    /// <summary>Changes a run, again if somebody else changed it at the same moment: who carries it out and who wants it to stop both write.</summary>
    /// <returns>Null where there is no such run.</returns>
    public static async Task<Recalculation?> UpdateRunAsync(
        ClinicDbFactory databases,
        Guid id,
        Action<Recalculation> change,
        CancellationToken cancellation
    )
    {
        while (true)
        {
            await using var db = databases.Open();
            if (await db.Recalculations.SingleOrDefaultAsync(r => r.Id == id, cancellation) is not { } run)
                return null;
            change(run);
            try
            {
                await db.SaveChangesAsync(cancellation);
                return run;
            }
            catch (DbUpdateConcurrencyException)
            {
                // What the other wrote is read, and ours said again.
            }
        }
    }

    /// <summary>The newest that came to its end.</summary>
    public static Task<Recalculation?> FindLastDoneAsync(ClinicDb db, CancellationToken cancellation) =>
        db
            .Recalculations.AsNoTracking()
            .Where(r => r.State == RecalculationState.Done)
            .OrderByDescending(r => r.AskedAt)
            .FirstOrDefaultAsync(cancellation);

    /// <summary>Asks for the night's run where it is due (<see cref="NightlyRunSchedule"/>), by the clock of the practice's first salon.</summary>
    public static async Task RequestNightlyIfDueAsync(ClinicDb db, Instant now, CancellationToken cancellation)
    {
        if (await db.Salons.AsNoTracking().OrderBy(s => s.Id).FirstOrDefaultAsync(cancellation) is not { } salon)
            return;
        var since = NightlyRunSchedule.StartOfNight(now, salon.TimeZone);
        var runs = await db.Recalculations.AsNoTracking().Where(r => r.AskedAt >= since || r.EndedAt == null).ToListAsync(cancellation);
        if (NightlyRunSchedule.IsDue(runs, now))
            await RequestAsync(db, askedBy: null, now, cancellation);
    }

    /// <summary>Past runs and fits beyond the newest so many are of no use to anybody.</summary>
    public static async Task DeleteOldRunsAndFitsAsync(ClinicDb db, int keep, CancellationToken cancellation)
    {
        var runs = db.Recalculations.OrderByDescending(r => r.AskedAt).Select(r => r.Id).Take(keep);
        await db.Recalculations.Where(r => r.EndedAt != null && !runs.Contains(r.Id)).ExecuteDeleteAsync(cancellation);
        var fits = db.StoredFits.OrderByDescending(f => f.FittedAt).Select(f => f.Id).Take(2 * keep);
        await db.StoredFits.Where(f => !fits.Contains(f.Id)).ExecuteDeleteAsync(cancellation);
    }
}
