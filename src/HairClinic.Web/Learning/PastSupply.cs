using HairClinic.Domain.Replay;

namespace HairClinic.Web.Learning;

/// <summary>Orders and lives of a replay, drawn from the practice's own, in the order they came.</summary>
/// <remarks>
/// An order takes as long as the next one of its kind that was really placed on that day or later, remakes and closures as they fell, or the
/// last there was; where the kind has none, its workshop's; else half of what the practice's row says. A life that no real unit tells is
/// that of the next unit of the kind that really ended, one after another.
/// </remarks>
public sealed class PastSupply : IReplayWorld
{
    private readonly IReadOnlyDictionary<Guid, UnitKindTerms> _kinds;
    private readonly ILookup<Guid, (LocalDate OrderedOn, int Days)> _leads;
    private readonly ILookup<Guid?, (LocalDate OrderedOn, int Days)> _leadsOfWorkshops;
    private readonly ILookup<Guid, int> _lives;
    private readonly Dictionary<Guid, int> _drawn = [];

    /// <param name="leads">Of orders that came, by the kind of unit.</param>
    /// <param name="lives">Worn days of units that ended, by kind, in the order in which they did.</param>
    public PastSupply(
        IReadOnlyDictionary<Guid, UnitKindTerms> kinds,
        IReadOnlyCollection<(Guid UnitKindId, LocalDate OrderedOn, LocalDate ReadyOn)> leads,
        IEnumerable<(Guid UnitKindId, int Life)> lives
    )
    {
        _kinds = kinds;
        var ordered = leads
            .OrderBy(l => l.OrderedOn)
            .ThenBy(l => l.ReadyOn)
            .Select(l => (l.UnitKindId, Lead: (l.OrderedOn, Math.Max(0, Period.DaysBetween(l.OrderedOn, l.ReadyOn)))))
            .ToList();
        _leads = ordered.ToLookup(l => l.UnitKindId, l => l.Lead);
        _leadsOfWorkshops = ordered.ToLookup(l => kinds[l.UnitKindId].WorkshopId, l => l.Lead);
        _lives = lives.ToLookup(l => l.UnitKindId, l => l.Life);
    }

    public int LeadDays(Guid unitKindId, LocalDate orderedOn)
    {
        var like = _leads[unitKindId].ToList();
        if (like.Count == 0 && _kinds[unitKindId].WorkshopId is { } workshop)
            like = [.. _leadsOfWorkshops[workshop]];
        if (like.Count == 0)
            return _kinds[unitKindId].LeadHalfDays;
        var next = like.FindIndex(l => l.OrderedOn >= orderedOn);
        return like[next < 0 ? ^1 : next].Days;
    }

    public int LifeOfAnother(Guid unitKindId) => LifeBeyond(unitKindId, 0);

    /// <summary>How long a unit lasts of which is known only that it lasted longer than so many worn days.</summary>
    public int LifeBeyond(Guid unitKindId, int worn)
    {
        var longer = _lives[unitKindId].Where(life => life > worn).ToList();
        if (longer.Count == 0)
            return Math.Max(worn + 1, _kinds[unitKindId].LifeToDays);
        var at = _drawn[unitKindId] = _drawn.GetValueOrDefault(unitKindId, -1) + 1;
        return longer[at % longer.Count];
    }
}
