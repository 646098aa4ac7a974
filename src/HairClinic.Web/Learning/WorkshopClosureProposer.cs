using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Proposes days of the year in which a workshop seems to be closed, where nobody was asked about them yet.</summary>
public static class WorkshopClosureProposer
{
    /// <param name="arrived">Units whose orders arrived, and are believed.</param>
    public static async Task ProposeAsync(
        ClinicDb db,
        ReorderFacts facts,
        IReadOnlyList<HairSystem> arrived,
        DateCheckFacts checks,
        LocalDate today,
        CancellationToken cancellation
    )
    {
        var kinds = facts.Kinds.Keys.Order().Index().ToDictionary(k => k.Item, k => k.Index);
        var byWorkshop = arrived.ToLookup(u => facts.Kinds[u.UnitKindId].WorkshopId);
        var found = new List<DateCheck>();
        foreach (var workshop in facts.Workshops.Values.Where(w => !w.Retired))
        {
            // What came in one parcel says one thing.
            var orders = byWorkshop[workshop.Id]
                .Select(u => new OrderSpan(
                    u.Dates.OrderedOn!.Value,
                    u.Dates.ArrivedOn!.Value,
                    kinds[u.UnitKindId],
                    facts.Kinds[u.UnitKindId].UsualLeadTime()
                ))
                .DistinctBy(o => (o.OrderedOn, o.ArrivedOn))
                .ToList();
            if (RepeatedClosureRule.Find(orders, workshop.Closures.Select(c => c.Days), today) is not { } seen)
                continue;
            var before = checks.OfWorkshop(workshop.Id).Where(c => c.Until is { } until && seen.Meets(c.From, until)).ToList();
            if (before.Count == 0)
                found.Add(DateCheck.OfWorkshop(Guid.CreateVersion7(), workshop.Id, seen, today));
            else
                // About when it begins is told a little differently from night to night.
                found.AddRange(before.Where(c => c.IsOpen));
        }
        await checks.StageAsync(db, found, [DateCheckKind.WorkshopClosed], cancellation);
    }
}
