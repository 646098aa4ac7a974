using HairClinic.Domain.Clients;
using HairClinic.Domain.Replacement;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Learning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Outlook.Ahead;

/// <summary>Whose next unit must be seen to: whoever is at risk of days without hair, and whose order is due soon.</summary>
public sealed record Danger(IReadOnlyList<Danger.Row> AtRisk, int AllAtRisk, IReadOnlyList<Danger.Row> Soon, int AllSoon)
{
    public const int Shown = 50;

    /// <summary>Of those shown, how many before one asks for more.</summary>
    public const int AtOnce = 10;
    public const int SoonDays = 30;

    internal static async Task<Danger> ReadAsync(ClinicDb db, LocalDate today, CancellationToken cancellation)
    {
        var plans =
            from plan in db.ReorderPlans.AsNoTracking()
            join client in SalonPlans.Planned(db) on plan.ClientId equals client.Id
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            select new
            {
                plan,
                client,
                salon.Name,
            };
        var until = today.PlusDays(SoonDays);
        var atRisk = plans.Where(p => p.plan.AtRisk);
        var soon = plans.Where(p => !p.plan.AtRisk && p.plan.OrderBy <= until);
        var rows = await atRisk
            .OrderByDescending(p => p.plan.ExpectedDaysWithoutHair)
            .ThenBy(p => p.client.Code)
            .Take(Shown)
            .ToListAsync(cancellation);
        var later = await soon.OrderBy(p => p.plan.OrderBy).ThenBy(p => p.client.Code).Take(Shown).ToListAsync(cancellation);
        return new(
            [.. rows.Select(r => RowOf(r.plan, r.client, r.Name))],
            await atRisk.CountAsync(cancellation),
            [.. later.Select(r => RowOf(r.plan, r.client, r.Name))],
            await soon.CountAsync(cancellation)
        );
    }

    private static Row RowOf(ReorderPlan plan, Client client, string salon) => new(client.Id, client.Code, client.Name, salon, plan);

    public sealed record Row(Guid ClientId, string Code, string Name, string Salon, ReorderPlan Plan);
}
