using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.PlaceOrder;

namespace HairClinic.Web.Tests.Features.Units.PlaceOrder;

public sealed class PlaceOrderTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Several_units_of_several_clients_go_out_with_their_prices_in_one_order()
    {
        HairSystem one = null!,
            other = null!,
            far = null!,
            stays = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b => (one, other, far, stays) = (b.Draft("U-1", b.Una), b.Draft("U-2", b.Ben), b.Draft("U-3", b.Far), b.Draft("U-4", b.Ben))
        );
        var screen = await book.Clinic.UseAsync<Slice, Slice.Screen>(book.AsOwner, s => s.OpenAsync(one.Id, null, Cancel));
        Assert.Equal(["U-1", "U-2", "U-3", "U-4"], screen.Drafts.Select(d => d.Serial));
        Assert.Equal([one.Id], screen.Start.Lines.Where(l => l.Chosen).Select(l => l.UnitId));

        var input = Order(book, (one, 60_000), (other, 70_000), (far, null)) with { PromisedFor = Today.PlusDays(40), SaidBy = "Ines" };
        var made = await SaveAsync(book, input, book.AsOwner);

        Assert.Equal(("7", 3), (made.Number, made.Units));
        foreach (var (unit, price) in new[] { (one, (long?)60_000), (other, 70_000), (far, null) })
        {
            var stored = await book.UnitAsync(unit);
            Assert.Equal((UnitState.Ordered, made.OrderId, price), (stored.State, stored.OrderId!.Value, stored.PriceMinor));
            Assert.Equal(
                (UnitPlace.Workshop, Today, Today.PlusDays(40)),
                (stored.Place, stored.Dates.OrderedOn, stored.Promises[0].PromisedFor)
            );
            Assert.Equal([UnitStepKind.Ordered, UnitStepKind.Promised], stored.Steps.Select(s => s.Kind).Order());
            Assert.All(stored.Steps, s => Assert.Equal((Today, (Guid?)book.Owner.Id), (s.On, s.RecordedBy)));
        }
        Assert.Equal(UnitState.Specified, (await book.UnitAsync(stays)).State);
        Assert.Equal("3 GBP", await book.AskAsync("select unit_count || ' ' || currency from workshop_orders"));
    }

    [Fact]
    public async Task A_price_in_another_currency_than_the_orders_is_refused()
    {
        HairSystem euros = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                euros = b.Draft("U-1", b.Una);
                euros.SetPrice(50_000, "EUR");
            }
        );

        await book.RefusedAsync("The price of {0} is in {1}, and the order is in {2}.", () => SaveAsync(book, Order(book, (euros, null))));
        await SaveAsync(book, Order(book, (euros, 45_000)));

        var stored = await book.UnitAsync(euros);
        Assert.Equal((45_000L, "GBP"), (stored.PriceMinor!.Value, stored.Currency));
    }

    [Fact]
    public async Task More_than_fifty_units_are_refused()
    {
        List<HairSystem> drafts = [];
        await using var book = await UnitBook.OpenAsync(
            server,
            b => drafts.AddRange(Enumerable.Range(1, 51).Select(i => b.Draft($"U-{i}", b.Una)))
        );
        var input = Order(book, [.. drafts.Select(d => (d, (long?)null))]);

        await book.RefusedAsync("An order takes {0} units at most.", () => SaveAsync(book, input));

        Assert.Equal(["An order takes 50 units at most."], new PlaceOrderRules().Validate(input).Errors.Select(e => e.ErrorMessage));
        input.Lines[50].Chosen = false;
        Assert.True(new PlaceOrderRules().Validate(input).IsValid);
        Assert.Equal(50, (await SaveAsync(book, input)).Units);
    }

    [Fact]
    public async Task What_another_workshop_makes_or_another_salons_client_waits_for_is_refused_and_so_is_tomorrow()
    {
        HairSystem gala = null!,
            far = null!,
            own = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b => (gala, far, own) = (b.Draft("U-1", b.Una, b.OtherKind), b.Draft("U-2", b.Far), b.Draft("U-3", b.Una))
        );

        await book.RefusedAsync(
            "Unit {0} is made by another workshop. Leave it out, or choose that workshop.",
            () => SaveAsync(book, Order(book, (own, null), (gala, null)))
        );
        await book.RefusedAsync(
            "One of these units is not in the book of your salons any more. Open the page again.",
            () => SaveAsync(book, Order(book, (own, null), (far, null)))
        );
        await book.RefusedAsync(
            "{0} is in the future: choose today or earlier.",
            () => SaveAsync(book, Order(book, (own, null)) with { SentOn = Today.PlusDays(1) })
        );
        await book.RefusedAsync(
            "Say to which salon it comes.",
            () => SaveAsync(book, Order(book, (own, null)) with { SalonId = book.Quayside.Id })
        );
    }

    [Fact]
    public async Task Ordered_by_two_people_at_the_same_moment_there_is_one_order_and_the_other_is_told()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.Draft("U-1", b.Una));

        var came = await UnitBook.BothAsync(
            () => SaveAsync(book, Order(book, (unit, null)) with { Number = "7" }),
            () => SaveAsync(book, Order(book, (unit, null)) with { Number = "8" }, book.AsManager)
        );

        Assert.Single(came, e => e is null);
        Assert.Single(
            came,
            e =>
                e
                    is OvertakenException
                        or Refusal { Sentence: "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next." }
        );
        Assert.Equal("1", await book.AskAsync("select count(*) from workshop_orders"));
        Assert.Equal([UnitStepKind.Ordered], (await book.UnitAsync(unit)).Steps.Select(s => s.Kind));
    }

    [Fact]
    public async Task A_number_that_is_taken_is_refused_and_the_next_free_one_is_proposed()
    {
        HairSystem next = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                b.Order("2", Today.PlusDays(-9), b.Draft("U-1", b.Una));
                next = b.Draft("U-2", b.Una);
            }
        );

        await book.RefusedAsync("There is an order {0} already.", () => SaveAsync(book, Order(book, (next, null)) with { Number = " 2 " }));

        var screen = await book.Clinic.UseAsync<Slice, Slice.Screen>(book.AtDesk, s => s.OpenAsync(null, book.Una.Id, Cancel));
        Assert.Equal(("3", book.Scene.Workshops[0].Id), (screen.Start.Number, screen.Start.WorkshopId!.Value));
    }

    [Fact]
    public void A_day_that_is_promised_before_the_order_goes_out_is_refused_by_the_rules()
    {
        var input = new Slice.Input
        {
            WorkshopId = Guid.NewGuid(),
            Number = "7",
            SalonId = Guid.NewGuid(),
            SentOn = Today,
            PromisedFor = Today.PlusDays(-1),
            Lines = [new Slice.Line { UnitId = Guid.NewGuid(), Chosen = true }],
        };

        Assert.Equal(
            ["A promised day does not lie before the order."],
            new PlaceOrderRules().Validate(input).Errors.Select(e => e.ErrorMessage)
        );
        Assert.True(new PlaceOrderRules().Validate(input with { PromisedFor = Today }).IsValid);
        Assert.Equal(
            ["Choose the units that are ordered."],
            new PlaceOrderRules().Validate(input with { PromisedFor = null, Lines = [] }).Errors.Select(e => e.ErrorMessage)
        );
    }

    private static Slice.Input Order(UnitBook book, params (HairSystem Unit, long? Price)[] lines) =>
        new()
        {
            WorkshopId = book.Scene.Workshops[0].Id,
            Number = "7",
            SalonId = book.ElmRow.Id,
            SentOn = Today,
            Currency = "GBP",
            Lines =
            [
                .. lines.Select(l => new Slice.Line
                {
                    UnitId = l.Unit.Id,
                    Chosen = true,
                    PriceMinor = l.Price,
                }),
            ],
        };

    private static Task<Slice.Outcome> SaveAsync(UnitBook book, Slice.Input input, PersonActor? by = null) =>
        book.Clinic.UseAsync<Slice, Slice.Outcome>(by ?? book.AtDesk, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
