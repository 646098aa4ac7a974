using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Brings the stored lead times up to the orders as they stand, and asks about those whose dates nobody would believe.</summary>
public static class LeadTimeRefresher
{
    /// <returns>Units whose orders arrived and are believed: what else is read off them needs no query.</returns>
    public static async Task<IReadOnlyList<HairSystem>> RefreshAsync(
        ClinicDb db,
        LeadTimeForecasts orders,
        IReadOnlyCollection<UnitKindTerms> kinds,
        DateCheckFacts checks,
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
        var asked = new List<DateCheck>();
        foreach (var kind in kinds)
        {
            if (!stored.TryGetValue(kind.Id, out var lead))
            {
                lead = new StoredLead(Guid.CreateVersion7(), kind.Id);
                db.StoredLeads.Add(lead);
            }
            asked.AddRange(Learn(lead, kind, [.. byKind[kind.Id]], byWorkshop[kind.WorkshopId], orders, checks));
        }
        await checks.StageAsync(db, asked, [DateCheckKind.OrderTook, DateCheckKind.OrderWaiting], cancellation);
        var strange = asked.Select(c => c.HairSystemId).ToHashSet();
        return
        [
            .. units.Where(u =>
                u.TellsOfLead
                && !strange.Contains(u.Id)
                && checks.Standing(DateCheckKind.OrderTook, u.Id, u.Dates.OrderedOn!.Value, u.Dates.ArrivedOn) != SpellStanding.LeftOut
            ),
        ];
    }

    /// <param name="ofKind">Units that were ordered.</param>
    /// <param name="ofWorkshop">Those of its workshop.</param>
    /// <returns>What has to be asked about.</returns>
    public static IReadOnlyList<DateCheck> Learn(
        StoredLead lead,
        UnitKindTerms kind,
        IReadOnlyList<HairSystem> ofKind,
        IEnumerable<HairSystem> ofWorkshop,
        LeadTimeForecasts orders,
        DateCheckFacts checks
    )
    {
        var found = OrderDatesInDoubt.Find(ofKind, kind.UsualLeadTime(), orders, checks);
        var made = ofWorkshop.Where(u => kind.WorkshopId is not null && u.RemadeTimes is not null).ToList();
        lead.LearnFrom(
            orders.Today,
            kind.UsualLeadTime(),
            found.Arrived,
            found.Waited,
            made.Count(u => u.RemadeTimes > 0),
            made.Count(u => u.RemadeTimes == 0 && u.Dates.AcceptedOn is not null)
        );
        return found.Asked;
    }
}
