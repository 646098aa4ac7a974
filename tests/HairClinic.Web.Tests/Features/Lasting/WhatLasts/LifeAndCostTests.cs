using Bunit;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Lasting.WhatLasts;

namespace HairClinic.Web.Tests.Features.Lasting.WhatLasts;

public sealed class LifeAndCostTests(PgServer server) : UiTestContext
{
    private Person _owner = null!;
    private Salon _here = null!;

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task Units_of_two_workshops_are_told_apart_and_those_still_worn_count_as_not_ended()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            LayUnits(scene, "Harbour workroom", count: 12, days: 60, retired: true);
            LayUnits(scene, "Quarry workroom", count: 12, days: 150, retired: true);
            LayUnits(scene, "Quarry workroom", count: 3, days: 200, retired: false);
        });

        var screen = await OpenAsync(clinic, new(LastingSubject.Life, LastingSide.Workshop));

        var quarry = screen.Groups.Single(g => g.Name == "Quarry workroom");
        Assert.Equal((15, 12, 3), (quarry.Spells, quarry.Ended, quarry.Censored));
        Assert.True(quarry.Curve.ByIntervals);
        Assert.True(screen.Compared!.InModel);
        // Watched until then at least: nobody looked at those that were retired before they were.
        Assert.Equal(15, quarry.AtRisk[0]);
        Assert.Equal(2, (await OpenAsync(clinic, new(LastingSubject.Life, LastingSide.Kind))).Groups.Count);
    }

    [Fact]
    public async Task A_month_of_wear_is_told_by_currency_and_never_added_across()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            LayUnits(scene, "Harbour workroom", count: 4, days: 40, retired: false, price: 90_000, currency: "GBP");
            LayUnits(scene, "Harbour workroom", count: 2, days: 40, retired: false, price: 110_000, currency: "USD");
            scene.ServiceWithPurpose(ServicePurpose.Rebond).Edit("Rebond", ServicePurpose.Rebond, 8_000, "GBP");
        });

        var costs = (await OpenAsync(clinic, new(LastingSubject.Cost, LastingSide.Kind))).Costs;

        Assert.Equal(["GBP", "USD"], costs.Select(c => c.Currency));
        var (pounds, dollars) = (costs[0], costs[1]);
        Assert.Equal((4, 90_000.0, 8_000.0), (pounds.Priced, pounds.UnitPrice, pounds.VisitPrice));
        Assert.Equal(90_000 / pounds.Cost.WornMonths, pounds.Cost.Unit, 1e-6);
        Assert.Equal(8_000 * pounds.Cost.RebondsAMonth!.Value, pounds.Cost.Visits!.Value, 1e-6);
        Assert.Null(dollars.Cost.Visits);
        Assert.Equal(dollars.Cost.Unit, dollars.Cost.Month);
        Assert.False(pounds.CanTell);
    }

    [Fact]
    public async Task The_page_greys_what_rests_on_what_was_assumed_and_says_what_is_not_in_it()
    {
        await using var clinic = await OpenAsync(scene =>
            LayUnits(scene, "Harbour workroom", 3, 40, retired: false, price: 90_000, currency: "GBP")
        );
        var screen = await OpenAsync(clinic, new(LastingSubject.Cost, LastingSide.Base));

        var page = Render<Web.Features.Lasting.WearCostSection>(p => p.Add(c => c.Screen, screen));

        var row = page.Find("tbody tr");
        Assert.Equal("quiet", row.ClassName);
        Assert.Contains("can’t tell yet: 0 of 3 worn out", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("900.00 (3)", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("no price in GBP", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("Supplies used are not recorded yet", page.Markup, StringComparison.Ordinal);
    }

    private Task<Slice.Screen> OpenAsync(TestClinic clinic, LastingQuery question) =>
        clinic.UseAsync<Slice, Slice.Screen>(clinic.Acting(_owner, _here), s => s.OpenAsync(question, Cancel));

    private Task<TestClinic> OpenAsync(Action<Scene> lay) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _here = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _owner = scene.Hire("Ottilie Vane", StaffRole.Owner, _here);
                lay(scene);
            }
        );

    private void LayUnits(Scene scene, string workshop, int count, int days, bool retired, long? price = null, string? currency = null)
    {
        var kind = scene.Kinds.Find(k => k.Name == $"Lace, {workshop}") ?? scene.AddUnitKind($"Lace, {workshop}", "French lace", workshop);
        var adhesive = scene.Products.FirstOrDefault() ?? scene.AddProduct("Adhesive", ProductKind.Adhesive, "acrylic", "1");
        for (var i = 0; i < count; i++)
        {
            var on = _here.DayOf(scene.Now).PlusDays(-days - i);
            var client = scene.AddClient($"{workshop[0]}{scene.Clients.Count}", "Person", _here);
            var unit = scene.AddUnit(client, kind, on.PlusDays(-1));
            if (price is { } paid)
                unit.SetPrice(paid, currency!);
            var bond = scene.AddBond(client, unit, on, adhesive);
            if (!retired)
            {
                // Looked at when it was bonded again, half of the way: nobody sees a unit wear out on a head.
                bond.Remove(on.PlusDays(days / 2), Domain.Bonding.RemovalReason.Scheduled);
                unit.TakeOff();
                scene.AddBond(client, unit, on.PlusDays(days / 2), adhesive);
                continue;
            }
            bond.Remove(on.PlusDays(days), Domain.Bonding.RemovalReason.Scheduled);
            unit.TakeOff();
            unit.LeaveService(UnitState.Retired, on.PlusDays(days), "worn out");
        }
    }
}
