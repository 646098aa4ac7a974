using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Settings.KeepSpares;

namespace HairClinic.Web.Tests.Features.Settings.KeepSpares;

/// <summary>Silk tops last 120 to 240 worn days, the thinnest skin 21 to 35; half of the orders take 56 days, and 14 more until they are ready.</summary>
public sealed class KeepSparesTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_rule_is_saved_for_its_kind_and_everything_calculated_anew_once()
    {
        await using var clinic = await OpenAsync(Kinds);
        var input = (await OpenFormAsync(clinic)).Input;
        LineOf(input, "Silk").Spares = 1;

        Assert.Equal(1, (await SaveAsync(clinic, input)).Changed);

        var kept = await clinic.ReadAsync(db => db.UnitKinds.ToDictionaryAsync(k => k.Name, k => k.Spares, Cancel));
        Assert.Equal((1, 0), (kept["Silk"], kept["Skin"]));
        Assert.Equal(1, await RecalculationsAsync(clinic));
        Assert.Equal(0, (await SaveAsync(clinic, (await OpenFormAsync(clinic)).Input)).Changed);
        Assert.Equal(1, await RecalculationsAsync(clinic));
    }

    [Fact]
    public async Task A_manager_sets_it_too_and_a_stylist_changes_nothing()
    {
        await using var clinic = await OpenAsync(Kinds);
        var input = (await OpenFormAsync(clinic)).Input;
        LineOf(input, "Silk").Spares = 2;

        await Assert.ThrowsAsync<OvertakenException>(() =>
            clinic.UseAsync<Slice, Slice.Outcome>(clinic.Acting(Stylist, Salon), s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel))
        );
        Assert.Equal(0, await clinic.ReadAsync(db => db.UnitKinds.SumAsync(k => k.Spares, Cancel)));
        Assert.Equal(0, await RecalculationsAsync(clinic));

        await ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

        Assert.Equal(2, await clinic.ReadAsync(db => db.UnitKinds.SumAsync(k => k.Spares, Cancel)));
    }

    [Fact]
    public async Task Of_one_kind_whoever_saves_second_is_told_and_of_two_kinds_both_are_kept()
    {
        await using var clinic = await OpenAsync(Kinds);
        var (first, second, third) = (
            (await OpenFormAsync(clinic)).Input,
            (await OpenFormAsync(clinic)).Input,
            (await OpenFormAsync(clinic)).Input
        );
        LineOf(first, "Silk").Spares = 1;
        LineOf(second, "Silk").Spares = 2;
        LineOf(third, "Skin").Spares = 2;
        LineOf(third, "Silk").Spares = 1;
        await SaveAsync(clinic, first);

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, second));
        Assert.Equal(1, (await SaveAsync(clinic, third)).Changed);
    }

    [Fact]
    public async Task More_than_two_are_refused_by_the_form_and_by_the_kind()
    {
        await using var clinic = await OpenAsync(Kinds);
        var input = (await OpenFormAsync(clinic)).Input;
        LineOf(input, "Silk").Spares = 3;

        Assert.Equal(["Keep no spare, one or two."], new KeepSparesRules().Validate(input).Errors.Select(e => e.ErrorMessage));
        await Refused.SayingAsync("Keep no spare, one or two.", () => SaveAsync(clinic, input));
    }

    [Fact]
    public async Task Kinds_that_are_ordered_are_shown_counted_over_all_salons_whoever_looks()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Kinds(scene);
            scene.AddUnitKind("Gone", "Silk top", "Workshop North").Retire();
            for (var i = 0; i < 3; i++)
                Planned(scene, $"c-{i}", i == 0 ? Salon : Other, "Skin").SetPrice(20_000 + 10_000 * i, i == 0 ? "USD" : "GBP");
        });

        var screen = await ManagerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

        // What somebody wears comes first.
        Assert.Equal([("Skin", 3), ("Silk", 0)], screen.Kinds.Select(k => (k.Name, k.Clients)));
        Assert.Equal(screen.Kinds.Select(k => k.Id), screen.Input.Lines.Select(l => l.UnitKindId));
        // Two were paid in pounds, and those alone are averaged.
        Assert.Equal(new Slice.UnitPrice("GBP", 2, 35_000), screen.Kinds[0].Price);
        Assert.Null(screen.Kinds[1].Price);
    }

    [Fact]
    public async Task One_ready_is_proposed_and_two_where_a_unit_takes_longer_to_come_than_to_wear_out_by_the_practices_own_orders()
    {
        await using var clinic = await OpenAsync(Kinds);

        var before = await OpenFormAsync(clinic);
        await clinic.ReadAsync(async db =>
        {
            // Thirty orders that took about three hundred days each, whatever the kind's row says.
            var lead = new StoredLead(Guid.CreateVersion7(), KindOf("Silk").Id);
            lead.LearnFrom(
                new(2027, 2, 3),
                new LeadTimePrior(56, 77),
                [.. Enumerable.Range(0, 30).Select(i => 290.0 + i)],
                [],
                remade: 0,
                kept: 30
            );
            db.StoredLeads.Add(lead);
            return await db.SaveChangesAsync(Cancel);
        });
        var after = await OpenFormAsync(clinic);

        Assert.Equal((1, 0), (RowOf(before, "Silk").Costs.Proposed, RowOf(before, "Silk").Orders));
        Assert.Equal(2, RowOf(before, "Skin").Costs.Proposed);
        Assert.Equal((2, 30), (RowOf(after, "Silk").Costs.Proposed, RowOf(after, "Silk").Orders));
    }

    [Fact]
    public async Task The_chance_that_the_practice_accepts_is_on_the_curve_and_a_spare_costs_units_and_buys_days()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Kinds(scene);
            scene.Settings.SetOrderRule(14, gapChancePercent: 7);
        });

        var screen = await OpenFormAsync(clinic);
        var costs = RowOf(screen, "Silk").Costs;

        Assert.Equal(7, screen.AcceptedPercent);
        Assert.Equal([0.2, 0.1, 0.07, 0.05, 0.02, 0.01], costs.Curve.Select(o => o.Alpha));
        Assert.Contains(costs.ByChance, costs.Curve);
        Assert.True(costs.ByChance.Gap <= 0.07);
        Assert.True(costs[1].IdleUnits > costs.ByChance.IdleUnits && costs[2].IdleUnits > costs[1].IdleUnits);
        Assert.True(costs[1].DaysWithoutPerYear < costs.ByChance.DaysWithoutPerYear);
        Assert.False(costs.IsFree(1));
        // The thinnest skin is ordered so early by the chance alone that one spare is there anyway.
        Assert.True(RowOf(screen, "Skin").Costs.IsFree(1));
    }

    private void Kinds(Scene scene)
    {
        scene.AddUnitKind("Silk", "Silk top", "Workshop North");
        scene.AddUnitKind("Skin", "Thin skin 0.03 mm", "Workshop North");
    }

    private HairSystem Planned(Scene scene, string code, Salon salon, string kind)
    {
        var client = scene.AddClient(code, $"Una {code}", salon);
        var plan = new ReorderPlan(Guid.CreateVersion7(), client.Id);
        var today = new NodaTime.LocalDate(2027, 2, 3);
        plan.Store(new ReorderOutlook(today, KindOf(kind).Id, 0.05, new ReorderAnswer(0, 9, 0, false), today.PlusDays(9)));
        scene.Db.ReorderPlans.Add(plan);
        return scene.AddUnit(client, KindOf(kind), today.PlusDays(-20));
    }

    private UnitKind KindOf(string name) => Scene.Kinds.Single(k => k.Name == name);

    private Slice.Line LineOf(Slice.Input input, string kind) => input.Lines.Single(l => l.UnitKindId == KindOf(kind).Id);

    private static Slice.KindRow RowOf(Slice.Screen screen, string kind) => screen.Kinds.Single(k => k.Name == kind);

    private Task<Slice.Screen> OpenFormAsync(TestClinic clinic) => OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

    private static Task<int> RecalculationsAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.WorkItems.CountAsync(w => w.Kind == WorkKind.Recalculate, Cancel));
}
