using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Looks each night whether a workshop, an adhesive or a lot of it has got worse: charts are brought up to date, alarms raised and closed.</summary>
/// <remarks>The night's own fit says what is usual, and what it was made from is what is watched; without an estimate nothing is.</remarks>
public static class StreamWatcher
{
    /// <summary>Six round trips, one of them the save.</summary>
    public static async Task WatchAsync(
        ClinicDb db,
        CheckedWearFit<HoldSpell> hold,
        CheckedWearFit<LifeSpell> life,
        IReadOnlyDictionary<KnownCovariate, double> lifeFactors,
        LocalDate today,
        CancellationToken cancellation
    )
    {
        var alarms = await db.WatchAlarms.ToListAsync(cancellation);
        var watch = new WatchNight(today, alarms, await db.StoredWatches.ToListAsync(cancellation));
        var units = await WatchedUnit.LoadAsync(db, cancellation);
        var openBonds = await OpenBondsAsync(db, alarms, cancellation);
        watch.CloseUsedUp(alarm => LeftOf(alarm, units, hold.All, openBonds));
        watch.WatchUnits(life.Fit, life.Spells, lifeFactors, l => units.GetValueOrDefault(l.UnitId)?.ArrivedOn);
        watch.WatchBonds(hold.Fit, hold.Spells);
        db.StoredWatches.AddRange(watch.Begun);
        db.StoredWatches.RemoveRange(watch.Over);
        db.WatchAlarms.AddRange(watch.Raised);
        await db.SaveChangesAsync(cancellation);
    }

    // Asked only where an alarm names bonds.
    private static async Task<HashSet<Guid>> OpenBondsAsync(ClinicDb db, List<WatchAlarm> alarms, CancellationToken cancellation) =>
        alarms.Exists(a => a.IsOpen && a.Kind != WatchedStreamKind.Workshop)
            ? [.. await db.Bonds.Where(b => b.RemovedOn == null).Select(b => b.Id).ToListAsync(cancellation)]
            : [];

    private static int LeftOf(
        WatchAlarm alarm,
        Dictionary<Guid, WatchedUnit> units,
        IReadOnlyCollection<HoldSpell> holds,
        HashSet<Guid> openBonds
    ) =>
        alarm.Kind == WatchedStreamKind.Workshop
            ? units.Values.Count(u => u.WorkshopId == alarm.StreamId && u.IsLeft && (u.ArrivedOn is not { } on || alarm.Names(on)))
            : holds.Count(h =>
                (alarm.Kind == WatchedStreamKind.Lot ? h.LotId : h.AdhesiveId) == alarm.StreamId
                && openBonds.Contains(h.BondId)
                && alarm.Names(h.AppliedOn)
            );
}

/// <summary>What the watch asks of a unit beside its life.</summary>
/// <param name="ArrivedOn">Or first known; null while it is on its way.</param>
/// <param name="IsLeft">It is worn, waits or is on its way.</param>
internal sealed record WatchedUnit(Guid? WorkshopId, LocalDate? ArrivedOn, bool IsLeft)
{
    public static async Task<Dictionary<Guid, WatchedUnit>> LoadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var units =
            from unit in db.HairSystems
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            select new
            {
                unit.Id,
                kind.WorkshopId,
                unit.Dates.ArrivedOn,
                First = db.Bonds.Where(b => b.HairSystemId == unit.Id).Min(b => (LocalDate?)b.AppliedOn),
                unit.State,
            };
        return (await units.ToListAsync(cancellation)).ToDictionary(
            u => u.Id,
            u => new WatchedUnit(u.WorkshopId, u.ArrivedOn ?? u.First, !u.State.IsGone() && u.State != UnitState.Specified)
        );
    }
}
