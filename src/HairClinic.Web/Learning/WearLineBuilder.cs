using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Turns a client's units, bonds and visits into what the wear line draws. The staff's page and the client's own ask it.</summary>
public static class WearLineBuilder
{
    /// <summary>Beyond these the oldest units that are gone are left to the list beneath the line.</summary>
    public const int MostLanes = 6;

    private const int MonthsBack = 12;
    private const int WeeksAhead = 6;

    /// <param name="ahead">What is expected of the units.</param>
    public static async Task<WearLineData> LoadAsync(
        ClinicDb db,
        Guid clientId,
        LocalDate today,
        WearLineForecast ahead,
        CancellationToken cancellation
    )
    {
        var units = await UnitsOf(db, clientId).ToListAsync(cancellation);
        var bonds = await db.Bonds.AsNoTracking().Where(b => b.ClientId == clientId).ToListAsync(cancellation);
        var visits = await db
            .Visits.AsNoTracking()
            .Where(v => v.ClientId == clientId && v.State != VisitState.Cancelled && v.State != VisitState.DidNotCome)
            .Join(db.ServiceKinds, v => v.ServiceKindId, s => s.Id, (v, s) => new WearLineVisit(v.Day, s.Name))
            .ToListAsync(cancellation);
        return Build(units, bonds, visits, today, ahead);
    }

    /// <summary>A client's units, and those lent to them, with promises and kinds, for whoever reads more of them than the line.</summary>
    public static IQueryable<UnitWithKindName> UnitsOf(ClinicDb db, Guid clientId)
    {
        // Two short lists: "theirs, or worn by them" would be asked of every unit there is.
        var ids = db
            .HairSystems.Where(u => u.ClientId == clientId)
            .Select(u => u.Id)
            .Union(db.Bonds.Where(b => b.ClientId == clientId).Select(b => b.HairSystemId));
        return db
            .HairSystems.AsNoTracking()
            .Include(u => u.Promises)
            .Where(u => ids.Contains(u.Id))
            .Join(db.UnitKinds, u => u.UnitKindId, k => k.Id, (u, k) => new UnitWithKindName(u, k.Name));
    }

    /// <param name="units">All of the client's units; what was only specified is not drawn.</param>
    /// <param name="bonds">All of the client's bonds.</param>
    /// <param name="visits">Kept and booked; not those called off.</param>
    /// <param name="ahead">What is expected of the units.</param>
    public static WearLineData Build(
        IReadOnlyCollection<UnitWithKindName> units,
        IReadOnlyCollection<Bond> bonds,
        IReadOnlyCollection<WearLineVisit> visits,
        LocalDate today,
        WearLineForecast ahead
    )
    {
        var lanes = units.Select(u => LaneOf(u, bonds, ahead)).Where(lane => Began(lane) is not null);
        var drawn = WearLineFutureBuilder.AddForecast(Newest(lanes, today), units, ahead, today);
        var seen = visits.OrderBy(v => v.On).ToList();
        var from = LocalDate.Max(
            today.PlusMonths(-MonthsBack),
            drawn.Select(lane => Began(lane)!.Value).Append(today.PlusMonths(-1)).Min()
        );
        var to = drawn.SelectMany(Ends).Concat(seen.Where(v => v.On > today).Select(v => v.On)).Append(today.PlusWeeks(WeeksAhead)).Max();
        if (ahead.Gap is { } gap && gap.Until > to)
            to = gap.Until;
        var end = LocalDate.Min(to.PlusWeeks(1), today.PlusMonths(WearLineFutureBuilder.MonthsAhead));
        return new WearLineData(from, end, today, [.. drawn.Select(lane => WearLineFutureBuilder.ClipUnit(lane, end))], seen, ahead.Gap)
        {
            Basis = ahead.Left.Count > 0 ? ahead.Basis : null,
        };
    }

    private static WearLineUnit LaneOf(UnitWithKindName unit, IEnumerable<Bond> bonds, WearLineForecast ahead)
    {
        var dates = unit.Unit.Dates;
        var worn = bonds.Where(b => b.HairSystemId == unit.Unit.Id).OrderBy(b => b.AppliedOn).Select(BondOf).ToList();
        var arrived = dates.ArrivedOn ?? dates.InspectedOn ?? dates.AcceptedOn ?? dates.PreparedOn ?? dates.FirstBondedOn;
        (LocalDate? Early, LocalDate? Late) likely = ahead.Arrivals.TryGetValue(unit.Unit.Id, out var days) ? days : (null, null);
        return new WearLineUnit(unit.Unit.Serial, unit.Kind)
        {
            Ordered = dates.OrderedOn,
            // A unit sent back for a remake has arrived once, but is on order again.
            Arrived = unit.Unit.State.IsInFlight() ? null : arrived ?? (worn.Count > 0 ? worn[0].AppliedOn : null),
            Retired = unit.Unit.State.IsGone() ? dates.RetiredOn ?? (worn.Count > 0 ? worn[^1].RemovedOn : null) : null,
            PromisedFrom = likely.Early,
            PromisedTo = likely.Late,
            Bonds = worn,
        };
    }

    private static WearLineBond BondOf(Bond bond) =>
        new(bond.AppliedOn, bond.OpensOn, bond.DueOn, bond.ClosesOn, bond.RemovedOn, bond.Lift?.UpBy);

    private static List<WearLineUnit> Newest(IEnumerable<WearLineUnit> lanes, LocalDate today) =>
        [
            .. lanes
                .Where(lane => lane.Retired is null || lane.Retired >= today.PlusMonths(-MonthsBack))
                .OrderByDescending(lane => lane.Retired is null)
                .ThenByDescending(Began)
                .Take(MostLanes)
                .OrderBy(Began),
        ];

    private static LocalDate? Began(WearLineUnit lane) =>
        lane.Ordered ?? lane.Arrived ?? (lane.Bonds.Count > 0 ? lane.Bonds[0].AppliedOn : null);

    private static IEnumerable<LocalDate> Ends(WearLineUnit lane)
    {
        if (lane.PromisedTo is { } promised)
            yield return promised;
        if (lane.Open is { } bond)
            yield return bond.Closes;
        if (lane.Band is { } band)
            yield return band.Late;
        if (lane.ReorderBy is { } reorder)
            yield return reorder;
    }
}

/// <summary>A unit with its promises, and the name of its kind.</summary>
public sealed record UnitWithKindName(HairSystem Unit, string Kind);
