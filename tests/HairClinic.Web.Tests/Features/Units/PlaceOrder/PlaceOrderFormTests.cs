using Bunit;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.PlaceOrder;

namespace HairClinic.Web.Tests.Features.Units.PlaceOrder;

public sealed class PlaceOrderFormTests : UiTestContext
{
    private static readonly LocalDate Today = UnitBook.Today;
    private static readonly Guid North = Guid.CreateVersion7();
    private static readonly Guid South = Guid.CreateVersion7();

    public PlaceOrderFormTests() => BeInteractive();

    [Fact]
    public void A_workshop_is_shown_its_own_drafts_and_a_price_is_asked_of_what_is_chosen()
    {
        Slice.Draft[] drafts = [Draft("U-1", North), Draft("U-2", South), Draft("U-3", null)];
        var input = new Slice.Input
        {
            WorkshopId = North,
            Currency = "GBP",
            Lines = [.. drafts.Select(d => new Slice.Line { UnitId = d.Id })],
        };
        var screen = new Slice.Screen(
            Today,
            drafts,
            [new Slice.WorkshopChoice(North, "Workshop North"), new Slice.WorkshopChoice(South, "Workshop South")],
            [],
            input
        );
        var form = Render<PlaceOrderForm>(p => p.Add(f => f.Screen, screen).Add(f => f.Input, input));

        Assert.Equal(["U-1", "U-3"], form.FindAll("label.choice strong").Select(s => s.TextContent));
        Assert.DoesNotContain("Price of", form.Markup, StringComparison.Ordinal);
        form.FindAll("label.choice input")[0].Change(true);
        Assert.Contains("Price of U-1", form.Markup, StringComparison.Ordinal);
        Assert.Contains("Order this unit", form.Markup, StringComparison.Ordinal);
        form.FindAll("label.choice input")[1].Change(true);
        Assert.Contains("Order these 2", form.Markup, StringComparison.Ordinal);
        Assert.Equal([true, false, true], input.Lines.Select(l => l.Chosen));
    }

    private static Slice.Draft Draft(string serial, Guid? workshop) =>
        new(Guid.CreateVersion7(), serial, "Everyday", workshop, null, null, null, null);
}
