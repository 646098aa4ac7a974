using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Features.Outlook;

/// <summary>Whose next unit must be seen to: whoever is at risk of a gap, whose order is due soon, and who lacks the spare that is always kept.</summary>
/// <param name="Spares">Neither at risk nor to be ordered for soon by the chance of a gap: the chance comes first, so that spares hide nobody.</param>
/// <param name="All">Clients who wear a unit.</param>
/// <param name="Accepted">The chance of a gap that the practice accepts.</param>
public sealed record GapRiskReport(
    IReadOnlyList<ClientGapRisk> AtRisk,
    int AllAtRisk,
    IReadOnlyList<ClientGapRisk> Soon,
    int AllSoon,
    IReadOnlyList<ClientGapRisk> Spares,
    int AllSpares,
    int All,
    double Accepted
)
{
    public const int Shown = 50;

    /// <summary>Dates that wait for somebody to say whether they are right: orders among them may be forgotten.</summary>
    public int DatesToCheck { get; init; }

    /// <summary>Of those shown, how many before one asks for more.</summary>
    public const int AtOnce = 10;

    internal static async Task<GapRiskReport> ReadAsync(ClinicDb db, PersonActor person, LocalDate today, CancellationToken cancellation)
    {
        var accepted = await db.PracticeSettings.Select(s => s.GapChancePercent / 100.0).SingleAsync(cancellation);
        var planned = ReorderPlanStore.ClientsToPlan(db);
        var plans =
            from plan in db.ReorderPlans.AsNoTracking()
            join client in planned on plan.ClientId equals client.Id
            select new
            {
                plan,
                client,
                DueOn = db
                    .Bonds.Where(b => b.ClientId == client.Id && b.RemovedOn == null)
                    .Select(b => (LocalDate?)b.DueOn)
                    .FirstOrDefault(),
            };
        var until = today.PlusDays(ReorderAdvice.SoonDays);
        var atRisk = plans.Where(p => p.plan.AtRisk);
        var soon = plans.Where(p => !p.plan.AtRisk && p.plan.OrderBy <= until);
        var spares = plans.Where(p => !p.plan.AtRisk && p.plan.OrderBy > until && p.plan.SparesMissing > 0);
        var rows = await atRisk
            .OrderByDescending(p => p.plan.ExpectedDaysWithoutHair)
            .ThenBy(p => p.client.Code)
            .Take(Shown)
            .ToListAsync(cancellation);
        var later = await soon.OrderBy(p => p.plan.OrderBy).ThenBy(p => p.client.Code).Take(Shown).ToListAsync(cancellation);
        var lacking = await spares.OrderBy(p => p.plan.OrderBy).ThenBy(p => p.client.Code).Take(Shown).ToListAsync(cancellation);
        return new(
            [.. rows.Select(r => RowOf(r.plan, r.client, r.DueOn))],
            await atRisk.CountAsync(cancellation),
            [.. later.Select(r => RowOf(r.plan, r.client, r.DueOn))],
            await soon.CountAsync(cancellation),
            [.. lacking.Select(r => RowOf(r.plan, r.client, r.DueOn))],
            await spares.CountAsync(cancellation),
            await planned.CountAsync(c => db.Bonds.Any(b => b.ClientId == c.Id && b.RemovedOn == null), cancellation),
            accepted
        )
        {
            DatesToCheck = await OpenDateChecks.Query(db, person).CountAsync(cancellation),
        };

        static ClientGapRisk RowOf(ReorderPlan plan, Client client, LocalDate? dueOn) =>
            new(client.Id, client.HomeSalonId, client.Code, client.Name, client.CalledAs, client.Phone, plan, dueOn);
    }

    /// <summary>So many at once is rather a book that does not know of their spares.</summary>
    public bool IsMostOfAll => 2 * AllAtRisk > All;
}
