using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Features.Wear;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using DueSlice = HairClinic.Web.Features.Wear.Due;
using Slice = HairClinic.Web.Features.Settings.KeepSpares;

namespace HairClinic.Web.Tests.Features.Settings.KeepSpares;

/// <summary>From the rule to the list of those to order for, and off it again.</summary>
public sealed class SpareStoryTests(PgServer server) : PracticeTest(server)
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Client _client = null!;
    private UnitKind _kind = null!;

    [Fact]
    public async Task A_client_with_one_unit_is_to_have_a_spare_ordered_from_the_day_the_rule_holds_until_one_is_on_order()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
            _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
            _client = scene.AddClient("c-1", "Una Test", Salon);
            scene.AddBond(_client, scene.AddUnit(_client, _kind, Today.PlusDays(-4)), Today.PlusDays(-3), adhesive);
        });
        await CatchUpAsync(clinic);
        Assert.Equal((0, false), await PlanAsync(clinic));
        Assert.Empty(await SparesToOrderAsync(clinic));

        await OwnerAsync<Slice, Slice.Outcome>(
            clinic,
            async s =>
            {
                var input = (await s.OpenAsync(Cancel)).Input;
                input.Lines[0].Spares = 1;
                return await s.SaveAsync(Guid.CreateVersion7(), input, Cancel);
            }
        );
        await CatchUpAsync(clinic);

        Assert.Equal((1, false), await PlanAsync(clinic));
        Assert.Equal(["c-1"], await SparesToOrderAsync(clinic));

        await clinic.ReadAsync(async db =>
        {
            var unit = new HairSystem(Guid.CreateVersion7(), "c-1-2", _client.Id, _kind.Id, Today);
            unit.Order(Today);
            db.HairSystems.Add(unit);
            return await db.SaveChangesAsync(Cancel);
        });
        await CatchUpAsync(clinic);

        Assert.Equal((0, false), await PlanAsync(clinic));
        Assert.Empty(await SparesToOrderAsync(clinic));
    }

    private Task<(int Missing, bool AtRisk)> PlanAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var plan = await db.ReorderPlans.SingleAsync(p => p.ClientId == _client.Id, Cancel);
            return (plan.SparesMissing, plan.AtRisk);
        });

    private async Task<IEnumerable<string>> SparesToOrderAsync(TestClinic clinic)
    {
        var due = await OwnerAsync<DueSlice, DueSlice.Screen>(
            clinic,
            s => s.OpenAsync(new(DuePart.Spares, AllSalons: true, After: null), Cancel)
        );
        Assert.All(due.Risks, r => Assert.Equal(ReorderVerdict.SpareMissing, r.ReorderAdviceOn(Today, due.GapAccepted).Verdict));
        return due.Risks.Select(r => r.Code);
    }

    // What was asked for is done, as the program's own loops do it.
    private static async Task CatchUpAsync(TestClinic clinic)
    {
        clinic.Clock.AdvanceSeconds(1);
        await clinic.UseAsync<PracticeWorkRunner, int>(clinic.Job, w => w.RunAllDueAsync(Cancel));
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
    }
}
