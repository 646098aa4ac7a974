using HairClinic.Web.Data;
using HairClinic.Web.Learning;
using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Features.Wear;

/// <summary>Clients at risk of a gap, or those who lack the spare that is always kept; those with most such days to expect first.</summary>
internal static class GapRiskRows
{
    /// <summary>Of both parts.</summary>
    public static IQueryable<ReorderPlan> PlansToShow(ClinicDb db, IReadOnlyList<Guid> salons) =>
        db.ReorderPlans.Where(p =>
            (p.AtRisk || p.SparesMissing > 0)
            && ReorderPlanStore.ClientsToPlan(db).Any(c => c.Id == p.ClientId && salons.Contains(c.HomeSalonId))
        );

    public static Task<List<ClientGapRisk>> ReadAsync(
        ClinicDb db,
        IReadOnlyList<Guid> salons,
        DuePart part,
        GapRiskCursor? after,
        int count,
        CancellationToken cancellation
    )
    {
        var plans = PlansToShow(db, salons).AsNoTracking().Where(p => p.AtRisk == (part == DuePart.AtRisk));
        if (after is not null)
            plans = plans.Where(p =>
                p.ExpectedDaysWithoutHair < after.Days || p.ExpectedDaysWithoutHair == after.Days && p.ClientId > after.ClientId
            );
        return (
            from plan in plans.OrderByDescending(p => p.ExpectedDaysWithoutHair).ThenBy(p => p.ClientId).Take(count)
            join client in db.Clients on plan.ClientId equals client.Id
            orderby plan.ExpectedDaysWithoutHair descending, plan.ClientId
            select new ClientGapRisk(
                client.Id,
                client.HomeSalonId,
                client.Code,
                client.Name,
                client.CalledAs,
                client.Phone,
                plan,
                db.Bonds.Where(b => b.ClientId == client.Id && b.RemovedOn == null).Select(b => (LocalDate?)b.DueOn).FirstOrDefault()
            )
        ).ToListAsync(cancellation);
    }
}
