using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Clients;

// What a photo can name: a unit of the client's, and a visit of theirs.
public sealed partial class Photos
{
    private static async Task RequireTheirsAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        if (input.UnitId is { } unitId && !await UnitsOf(db, input.ClientId).AnyAsync(u => u.Id == unitId, cancellation))
            throw new Refusal("This unit is not the client’s, and was not lent to them.");
        if (input.VisitId is { } visitId && !await VisitsOf(db, input.ClientId).AnyAsync(v => v.Id == visitId, cancellation))
            throw new Refusal("This visit is not the client’s.");
    }

    private static IQueryable<HairSystem> UnitsOf(ClinicDb db, Guid clientId) =>
        db.HairSystems.Where(u => u.ClientId == clientId || db.UnitLoans.Any(l => l.HairSystemId == u.Id && l.ClientId == clientId));

    private static IQueryable<Visit> VisitsOf(ClinicDb db, Guid clientId) =>
        db.Visits.Where(v => v.ClientId == clientId && v.State != VisitState.Cancelled && v.State != VisitState.DidNotCome);

    private static IQueryable<VisitChoice> Choices(ClinicDb db, IQueryable<Visit> visits) =>
        from visit in visits
        join service in db.ServiceKinds on visit.ServiceKindId equals service.Id
        orderby visit.StartsAt descending
        select new VisitChoice(visit.Id, visit.Day, service.Name);
}
