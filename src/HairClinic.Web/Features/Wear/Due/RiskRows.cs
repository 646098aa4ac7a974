using HairClinic.Domain.Replacement;
using HairClinic.Web.Data;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Wear;

/// <summary>Clients at risk of a gap, those with most such days to expect first.</summary>
internal static class RiskRows
{
    public static IQueryable<ReorderPlan> Query(ClinicDb db, IReadOnlyList<Guid> salons) =>
        db.ReorderPlans.Where(p => p.AtRisk && ReorderPlanStore.Planned(db).Any(c => c.Id == p.ClientId && salons.Contains(c.HomeSalonId)));

    public static Task<List<RiskRow>> ReadAsync(
        ClinicDb db,
        IReadOnlyList<Guid> salons,
        RiskCursor? after,
        int count,
        CancellationToken cancellation
    )
    {
        var plans = Query(db, salons).AsNoTracking();
        if (after is not null)
            plans = plans.Where(p =>
                p.ExpectedDaysWithoutHair < after.Days || p.ExpectedDaysWithoutHair == after.Days && p.ClientId > after.ClientId
            );
        return (
            from plan in plans.OrderByDescending(p => p.ExpectedDaysWithoutHair).ThenBy(p => p.ClientId).Take(count)
            join client in db.Clients on plan.ClientId equals client.Id
            orderby plan.ExpectedDaysWithoutHair descending, plan.ClientId
            select new RiskRow(
                client.Id,
                client.HomeSalonId,
                client.Code,
                client.Name,
                client.CalledAs,
                client.Phone,
                plan,
                db.Bonds.Where(b => b.ClientId == client.Id && b.RemovedOn == null)
                    .Select(b => (NodaTime.LocalDate?)b.DueOn)
                    .FirstOrDefault()
            )
        ).ToListAsync(cancellation);
    }
}

/// <summary>One client who may lack a unit that still wears well, as the last plan has it.</summary>
public sealed record RiskRow(
    Guid ClientId,
    Guid SalonId,
    string Code,
    string Name,
    string? CalledAs,
    string? Phone,
    ReorderPlan Plan,
    LocalDate? RebondDueOn
)
{
    /// <param name="accepted">The chance of a gap that the practice accepts.</param>
    public OrderStanding StandingOn(LocalDate today, double accepted) => Plan.StandingOn(today, RebondDueOn is not null, accepted);

    public RiskCursor Cursor => new(Plan.ExpectedDaysWithoutHair, ClientId);
}
