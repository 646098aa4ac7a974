using HairClinic.Domain.Replacement;
using HairClinic.Web.Data;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Outlook;

/// <summary>Whose next unit must be seen to: whoever is at risk of a gap, and whose order is due soon.</summary>
/// <param name="All">Clients who wear a unit.</param>
public sealed record GapRisks(IReadOnlyList<GapRisks.Row> AtRisk, int AllAtRisk, IReadOnlyList<GapRisks.Row> Soon, int AllSoon, int All)
{
    public const int Shown = 50;

    /// <summary>Of those shown, how many before one asks for more.</summary>
    public const int AtOnce = 10;

    internal static async Task<GapRisks> ReadAsync(ClinicDb db, LocalDate today, CancellationToken cancellation)
    {
        var alpha = await db.PracticeSettings.Select(s => s.GapChancePercent / 100.0).SingleAsync(cancellation);
        var planned = ReorderPlanStore.Planned(db);
        var plans =
            from plan in db.ReorderPlans.AsNoTracking()
            join client in planned on plan.ClientId equals client.Id
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            select new
            {
                plan,
                client,
                salon.Name,
                OnHead = db.Bonds.Any(b => b.ClientId == client.Id && b.RemovedOn == null),
            };
        var until = today.PlusDays(OrderStanding.SoonDays);
        var atRisk = plans.Where(p => p.plan.AtRisk);
        var soon = plans.Where(p => !p.plan.AtRisk && p.plan.OrderBy <= until);
        var rows = await atRisk
            .OrderByDescending(p => p.plan.ExpectedDaysWithoutHair)
            .ThenBy(p => p.client.Code)
            .Take(Shown)
            .ToListAsync(cancellation);
        var later = await soon.OrderBy(p => p.plan.OrderBy).ThenBy(p => p.client.Code).Take(Shown).ToListAsync(cancellation);
        return new(
            [.. rows.Select(r => RowOf(r.plan, r.client, r.Name, r.OnHead))],
            await atRisk.CountAsync(cancellation),
            [.. later.Select(r => RowOf(r.plan, r.client, r.Name, r.OnHead))],
            await soon.CountAsync(cancellation),
            await planned.CountAsync(c => db.Bonds.Any(b => b.ClientId == c.Id && b.RemovedOn == null), cancellation)
        );

        Row RowOf(ReorderPlan plan, Client client, string salon, bool onHead) =>
            new(client.Id, client.Code, client.Name, salon, plan, plan.StandingOn(today, onHead, alpha));
    }

    /// <summary>So many at once is rather a book that does not know of their spares.</summary>
    public bool IsMostOfAll => 2 * AllAtRisk > All;

    public sealed record Row(Guid ClientId, string Code, string Name, string Salon, ReorderPlan Plan, OrderStanding Standing);
}
