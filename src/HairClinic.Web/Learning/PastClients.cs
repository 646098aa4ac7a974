using HairClinic.Domain.Replay;

namespace HairClinic.Web.Learning;

/// <summary>Reads clients' pasts as a replay takes them.</summary>
public sealed class PastClients
{
    private readonly PastRecords _records;
    private readonly Dictionary<Guid, LifeSpell> _spells;

    /// <param name="records">All clients' units' orders and lives are what others' are drawn from.</param>
    public PastClients(PastRecords records)
    {
        _records = records;
        _spells = records.LifeSpells.ToDictionary(s => s.UnitId);
        var units = records.Hair.SelectMany(c => c.Units).Select(u => (u.Availability, Unit: Row(u.UnitId))).ToList();
        var ended = units.FindAll(u => HasEnded(u.Unit, u.Availability));
        EndedUnits = ended.Count;
        Supply = new PastSupply(
            records.Kinds,
            [
                .. units
                    .Where(u => u.Availability is { OrderedOn: not null, ReadyOn: not null })
                    .Select(u => (u.Unit.UnitKindId, u.Availability.OrderedOn!.Value, u.Availability.ReadyOn!.Value)),
            ],
            ended
                .Where(u => WornBefore(u.Unit.Id, records.Today) > 0)
                .OrderBy(u => u.Availability.GoneOn ?? u.Availability.WornOutOn)
                .ThenBy(u => u.Unit.Id)
                .Select(u => (u.Unit.UnitKindId, WornBefore(u.Unit.Id, records.Today)))
        );
    }

    public PastSupply Supply { get; }

    /// <summary>Units whose end is known: worn out, lost or damaged.</summary>
    public int EndedUnits { get; }

    /// <param name="from">Not before; a client's own past begins with their first bond.</param>
    /// <returns>Null for whoever wore nothing by today.</returns>
    public (ReplayedClient Past, int ReallyOrdered)? Read(ClientHairHistory client, LocalDate from)
    {
        if (client.Hair.Bonds.Count == 0)
            return null;
        from = LocalDate.Max(from, client.Hair.Bonds.Min(b => b.AppliedOn));
        if (from > _records.Today)
            return null;
        var units = client.Units.Select(u => (u.Availability, Unit: Row(u.UnitId))).ToList();
        var house = units.Where(u => u.Availability.ReadyOn <= from && !(u.Availability.GoneOn < from)).ToList();
        var coming = units.Where(u => u.Availability.OrderedOn < from && IsToCome(u.Availability, from)).ToList();
        var later = units.Where(u => !house.Contains(u) && !coming.Contains(u) && _records.Lives.FirstWornOn(u.Unit.Id) >= from).ToList();
        return (
            new ReplayedClient(
                from,
                DaysOf(client, from),
                [
                    .. house
                        .OrderBy(u => _records.Lives.FirstWornOn(u.Unit.Id) ?? LocalDate.MaxIsoValue)
                        .Select(u => UnitOf(u.Unit, u.Availability, from))
                        .Where(u => u.Worn < u.Life),
                ],
                [
                    .. coming.Select(u => new ReplayOrder(
                        UnitOf(u.Unit, u.Availability, from),
                        u.Availability.OrderedOn!.Value,
                        u.Availability.ReadyOn ?? _records.Today.PlusDays(1)
                    )),
                ],
                [.. later.OrderBy(u => _records.Lives.FirstWornOn(u.Unit.Id)).Select(u => UnitOf(u.Unit, u.Availability, from).Life)]
            )
            {
                EmergencySpareFrom = units.Where(u => u.Unit.State == UnitState.EmergencySpare).Min(u => u.Unit.Dates.RetiredOn),
            },
            units.Count(u => u.Availability.OrderedOn >= from)
        );
    }

    private static bool IsToCome(UnitAvailability unit, LocalDate from) =>
        unit.ReadyOn > from || unit.ReadyOn is null && unit.GoneOn is null;

    private ReplayUnit UnitOf(HairSystem unit, UnitAvailability availability, LocalDate from)
    {
        var worn = WornBefore(unit.Id, _records.Today);
        var life = HasEnded(unit, availability) ? worn : Supply.LifeBeyond(unit.UnitKindId, worn);
        return new ReplayUnit(unit.UnitKindId, WornBefore(unit.Id, from), life);
    }

    // Worn out, lost or damaged: whatever was done with it, it gave no more days than these. What was put aside sound would have.
    private bool HasEnded(HairSystem unit, UnitAvailability availability) =>
        availability.IsLost
        || unit.State == UnitState.Retired && _spells.GetValueOrDefault(unit.Id)?.Spell.End is not SpellEnd.After
        || availability.WornOutOn is not null && unit.State != UnitState.Retired;

    private ReplayDay[] DaysOf(ClientHairHistory client, LocalDate from)
    {
        var own = client.Units.SelectMany(u => _records.Lives.WornPeriodsOf(u.UnitId)).ToList();
        return
        [
            .. GapFinder
                .Days(client.Hair, from, _records.Today)
                .Select(
                    (day, i) =>
                        day switch
                        {
                            DayOfHair.NotWatched => ReplayDay.NotWatched,
                            DayOfHair.Without => ReplayDay.Without,
                            _ => Kind(from.PlusDays(i)),
                        }
                ),
        ];

        ReplayDay Kind(LocalDate day) =>
            own.Exists(p => p.From <= day && !(p.To <= day)) ? ReplayDay.Worn
            : client.Hair.Bonds.Any(b => b.AppliedOn <= day && !(b.RemovedOn <= day)) ? ReplayDay.Lent
            : ReplayDay.Off;
    }

    private int WornBefore(Guid unitId, LocalDate day) => WornPeriod.DaysWornBefore(_records.Lives.WornPeriodsOf(unitId), day);

    private HairSystem Row(Guid unitId) => _records.UnitsById[unitId];
}
