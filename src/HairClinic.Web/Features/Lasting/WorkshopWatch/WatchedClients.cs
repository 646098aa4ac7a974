using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Lasting;

/// <summary>Whom an open alarm concerns.</summary>
internal static class WatchedClients
{
    // More than anybody rings in a day.
    private const int Most = 100;

    public static Task<List<WatchedClient>> LoadAsync(ClinicDb db, WatchAlarm alarm, CancellationToken cancellation) =>
        alarm.Kind == WatchedStreamKind.Workshop ? OfWorkshopAsync(db, alarm, cancellation) : OfAdhesiveAsync(db, alarm, cancellation);

    private static Task<List<WatchedClient>> OfWorkshopAsync(ClinicDb db, WatchAlarm alarm, CancellationToken cancellation)
    {
        var gone = Enum.GetValues<UnitState>().Where(state => state.IsGone() || state == UnitState.Specified).ToList();
        var named =
            from unit in db.HairSystems
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            from client in db.Clients
            where client.Id == unit.ClientId && kind.WorkshopId == alarm.StreamId && !gone.Contains(unit.State)
            where unit.Dates.ArrivedOn == null || unit.Dates.ArrivedOn >= alarm.CohortFrom
            orderby db.ReorderPlans.Where(p => p.ClientId == client.Id).Sum(p => p.ExpectedDaysWithoutHair) descending, client.Code
            select new WatchedClient(
                client.Id,
                client.Name,
                client.Code,
                unit.Serial,
                unit.Dates.ArrivedOn,
                unit.State == UnitState.Bonded,
                db.ReorderPlans.Any(p => p.ClientId == client.Id && p.AtRisk)
            );
        return named.Take(Most).ToListAsync(cancellation);
    }

    private static Task<List<WatchedClient>> OfAdhesiveAsync(ClinicDb db, WatchAlarm alarm, CancellationToken cancellation)
    {
        var isLot = alarm.Kind == WatchedStreamKind.Lot;
        var named =
            from bond in db.Bonds
            join unit in db.HairSystems on bond.HairSystemId equals unit.Id
            join client in db.Clients on bond.ClientId equals client.Id
            where bond.RemovedOn == null && bond.AppliedOn >= alarm.CohortFrom
            where db.BondProducts.Any(p => p.BondId == bond.Id && (isLot ? p.LotId == alarm.StreamId : p.ProductId == alarm.StreamId))
            orderby bond.AppliedOn, client.Code
            select new WatchedClient(client.Id, client.Name, client.Code, unit.Serial, bond.AppliedOn, true, false);
        return named.Take(Most).ToListAsync(cancellation);
    }
}
