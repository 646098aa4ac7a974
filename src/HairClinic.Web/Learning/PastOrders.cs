using HairClinic.Domain.Replay;

namespace HairClinic.Web.Learning;

/// <summary>Every order of the past again: the chance of a gap that would have been said on its day, and whether one came.</summary>
/// <remarks>
/// The chance is of what the records can tell: that nothing is on the head and nothing bondable in house before the unit is accepted. Days of
/// preparation, which a client's own page counts too, are therefore left away.
/// </remarks>
public sealed class PastOrders(
    PastRecords records,
    IReadOnlyList<ClientHairHistory> clients,
    Func<LocalDate, PastKnowledge> knownBefore,
    Func<PastKnowledge, ReorderFacts> factsOf
)
{
    private readonly ReorderRule _rule = new(LeadTimeForecasts.DaysInSight);

    /// <summary>Orders that nothing can be said of: too young, called off, or still on their way without a gap so far.</summary>
    public int LeftOut { get; private set; }

    public List<(Guid ClientId, LocalDate Day, double Said, bool Came)> Chances(CancellationToken cancellation)
    {
        var found = new List<(Guid, LocalDate, double, bool)>();
        foreach (var client in clients.Where(c => c.Hair.Bonds.Count > 0))
        {
            cancellation.ThrowIfCancellationRequested();
            var first = client.Hair.Bonds.Min(b => b.AppliedOn);
            foreach (var order in client.Units.GroupBy(u => u.Availability.OrderedOn).Where(g => g.Key > first).OrderBy(g => g.Key))
            {
                var (day, units) = (order.Key!.Value, order.Select(u => u.Availability).ToList());
                if (Came(client.Hair, day, units) is not { } came)
                    LeftOut++;
                else if (Said(client, day) is { } said)
                    found.Add((client.Id, day, said, came));
            }
        }
        return found;
    }

    // Null where it cannot be said, or not yet.
    private bool? Came(HairHistory hair, LocalDate day, List<UnitAvailability> units)
    {
        if (day > records.Today.PlusDays(-ChanceBins.SettledAfterDays))
            return null;
        var ready = units.Min(u => u.ReadyOn);
        if (ready <= day)
            return false;
        if (ready is null && units.All(u => u.GoneOn is not null))
            return null;
        var gaps = GapFinder.Find(hair, day.PlusDays(1), ready ?? records.Today).Gaps;
        return gaps.Count > 0 ? true
            : ready is null ? null
            : false;
    }

    // From what was known the evening before. Who had no hair left, or was lapsed, is told nothing new by a chance.
    private double? Said(ClientHairHistory client, LocalDate day)
    {
        var known = knownBefore(day);
        var units = ClientUnits.AsOf(records.Lives.AsOf(day.PlusDays(-1), client.Id), records.Kinds, client.Id, client.SalonId, day);
        if (factsOf(known).PrepareReorder(units) is not { } order || order.InHand.Count == 0)
            return null;
        return ReorderPlanner.LargerGapChance(_rule, order.Question with { Preparation = null, PreparationDays = known.DaysToAccept });
    }
}
