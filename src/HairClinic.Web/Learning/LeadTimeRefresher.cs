using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Brings the stored lead times up to the orders as they stand.</summary>
public static class LeadTimeRefresher
{
    public static async Task RefreshAsync(
        ClinicDb db,
        LeadTimeForecasts orders,
        IReadOnlyCollection<UnitKindTerms> kinds,
        CancellationToken cancellation
    )
    {
        var units = await db
            .HairSystems.AsNoTracking()
            .Include(u => u.Promises)
            .Where(u => u.Dates.OrderedOn != null)
            .ToListAsync(cancellation);
        var stored = await db.StoredLeads.ToDictionaryAsync(s => s.UnitKindId, cancellation);
        var workshopOf = kinds.ToDictionary(s => s.Id, s => s.WorkshopId);
        var byKind = units.ToLookup(u => u.UnitKindId);
        var byWorkshop = units.ToLookup(u => workshopOf[u.UnitKindId]);
        foreach (var kind in kinds)
        {
            if (!stored.TryGetValue(kind.Id, out var lead))
            {
                lead = new StoredLead(Guid.CreateVersion7(), kind.Id);
                db.StoredLeads.Add(lead);
            }
            var own = byKind[kind.Id].ToList();
            var made = byWorkshop[kind.WorkshopId].Where(u => kind.WorkshopId is not null && u.RemadeTimes is not null).ToList();
            lead.LearnFrom(
                orders.Today,
                kind.UsualLeadTime(),
                [.. own.Where(u => u.TellsOfLead).OrderBy(u => u.Dates.ArrivedOn).Select(u => (double)orders.WorkingDaysTaken(u))],
                [
                    .. own.Where(u => u.State.IsInFlight() && !u.IsBeingRemade)
                        .Select(u => (double)orders.WorkingDaysWaited(u, orders.Today)),
                ],
                made.Count(u => u.RemadeTimes > 0),
                made.Count(u => u.RemadeTimes == 0 && u.Dates.AcceptedOn is not null)
            );
        }
    }
}
