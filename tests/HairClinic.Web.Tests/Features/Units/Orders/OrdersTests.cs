using HairClinic.Domain.Checks;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.Orders;

namespace HairClinic.Web.Tests.Features.Units.Orders;

/// <summary>When to ask after an order is common practice, no source.</summary>
public sealed class OrdersTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_part_of_the_way_is_counted_and_what_presses_comes_first()
    {
        await using var book = await OpenAsync();

        var screen = await OpenAsync(book, OrdersQuestion.Everything);

        Assert.Equal([8, 4, 1, 5, 1, 1], Enum.GetValues<OrdersPart>().Select(p => screen.Counts[p]));
        Assert.Equal("U-silent U-late U-asked U-here", Serials(await OpenAsync(book, Part(OrdersPart.ToChase)), sorted: false));
        Assert.Equal("U-draft", Serials(await OpenAsync(book, Part(OrdersPart.Drafts))));
        Assert.Equal("U-asked U-away U-late U-new U-silent", Serials(await OpenAsync(book, Part(OrdersPart.AtWorkshop))));
        Assert.Equal("U-here", Serials(await OpenAsync(book, Part(OrdersPart.ToInspect))));
        Assert.Equal("U-shelf", Serials(await OpenAsync(book, Part(OrdersPart.ToPrepare))));
    }

    [Fact]
    public async Task Why_somebody_asks_today_stands_in_the_row_with_how_late_it_is_and_until_when_a_claim_is_taken()
    {
        await using var book = await OpenAsync();

        var rows = (await OpenAsync(book, OrdersQuestion.Everything)).Rows.ToDictionary(r => r.Serial);

        // Promised anew, but late is counted from the first day that was promised.
        Assert.Equal(
            (14, Today.PlusDays(-14), Today.PlusDays(-4)),
            (rows["U-late"].DaysLate, rows["U-late"].FirstPromise, rows["U-late"].Promise)
        );
        Assert.Equal([ChaseReason.Late], rows["U-late"].Chase);
        Assert.Equal([ChaseReason.NotAcknowledged], rows["U-silent"].Chase);
        Assert.Equal([ChaseReason.QuestionOpen], rows["U-asked"].Chase);
        Assert.Equal((1, (int?)null), (rows["U-asked"].OpenQuestions, rows["U-asked"].DaysLate));
        Assert.Equal([ChaseReason.ToInspect], rows["U-here"].Chase);
        Assert.Equal(Today.PlusDays(6), rows["U-here"].ClaimUntil);
        Assert.Empty(rows["U-new"].Chase);
        Assert.Equal(("Una Test", "c-1"), (rows["U-new"].Client!.Name, rows["U-new"].Client!.Code));
    }

    [Fact]
    public async Task What_is_on_its_way_says_between_which_days_it_will_likely_be_here_and_nothing_else_does()
    {
        await using var book = await OpenAsync();

        var rows = (await OpenAsync(book, OrdersQuestion.Everything)).Rows;

        foreach (var row in rows)
            Assert.Equal(row.State.IsInFlight(), row.Likely is not null);
        var likely = rows.Single(r => r.Serial == "U-new").Likely!.Value;
        Assert.True(Today < likely.Early && likely.Early < likely.Late);
        // Half of the orders of this kind take 56 days.
        Assert.InRange(Today.PlusDays(-2 + 56), likely.Early, likely.Late);
    }

    [Fact]
    public async Task An_order_that_may_be_forgotten_is_expected_on_no_day_until_somebody_says_that_it_is_on_its_way()
    {
        var ordered = Today.PlusDays(-400);
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                unit = b.Draft("U-old", b.Una);
                b.Order("for U-old", ordered, unit);
                b.Scene.Db.DateChecks.Add(
                    DateCheck.OfUnit(Guid.CreateVersion7(), DateCheckKind.OrderWaiting, unit.Id, new(ordered, null, 280, 40, 70), Today)
                );
            }
        );

        var asked = (await OpenAsync(book, OrdersQuestion.Everything)).Rows.Single();
        Assert.True(asked is { MayBeForgotten: true, Likely: null });

        await book.Clinic.ReadAsync(async db =>
        {
            (await db.DateChecks.SingleAsync(Cancel)).SetAnswer(DateCheckAnswer.Right, null, book.Clinic.Clock.GetCurrentInstant(), Today);
            return await db.SaveChangesAsync(Cancel);
        });
        var answered = (await OpenAsync(book, OrdersQuestion.Everything)).Rows.Single();
        Assert.True(answered is { MayBeForgotten: false, Likely: not null });
    }

    [Fact]
    public async Task It_is_narrowed_to_a_workshop_or_a_salon_and_the_address_says_so()
    {
        await using var book = await OpenAsync();
        var gala = book.Scene.Workshops[1].Id;

        Assert.Equal("U-draft", Serials(await OpenAsync(book, OrdersQuestion.Everything with { WorkshopId = gala })));
        Assert.Equal("U-far", Serials(await OpenAsync(book, OrdersQuestion.Everything with { SalonId = book.Quayside.Id }, book.AsOwner)));
        Assert.Equal("U-far", Serials(await OpenAsync(book, OrdersQuestion.Everything, book.AsElsewhere)));
        Assert.Equal(9, (await OpenAsync(book, OrdersQuestion.Everything, book.AsOwner)).Counts[OrdersPart.All]);

        Assert.Equal(
            $"/orders?part=to-chase&workshop={gala}&salon={book.Quayside.Id}&page=2",
            new OrdersQuestion(OrdersPart.ToChase, gala, book.Quayside.Id, 2).Href()
        );
        Assert.Equal(OrdersPart.ToChase, OrdersQuestion.ParsePart("to-chase"));
        Assert.Equal(OrdersPart.All, OrdersQuestion.ParsePart("mistyped"));
    }

    [Fact]
    public async Task A_long_list_comes_page_by_page()
    {
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                for (var i = 0; i < Slice.PageSize + 3; i++)
                    b.Draft($"U-{i:00}", b.Una);
            }
        );

        var first = await OpenAsync(book, OrdersQuestion.Everything);
        var second = await OpenAsync(book, OrdersQuestion.Everything with { Page = 2 });

        Assert.Equal((50, true, 3, false), (first.Rows.Count, first.HasMore, second.Rows.Count, second.HasMore));
        Assert.Empty(first.Rows.Select(r => r.Serial).Intersect(second.Rows.Select(r => r.Serial)));
    }

    [Fact]
    public async Task A_trainee_sees_the_units_of_their_own_clients_without_prices()
    {
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                b.Draft("U-1", b.Una).SetPrice(60_000, "GBP");
                b.Draft("U-2", b.Ben);
                b.GiveToTrainee(b.Una);
            }
        );

        var theirs = await OpenAsync(book, OrdersQuestion.Everything, book.AsTrainee);

        Assert.Equal(("U-1", false), (Serials(theirs), theirs.MayWrite));
        Assert.Null(theirs.Rows[0].PriceMinor);
        Assert.Equal(60_000, (await OpenAsync(book, OrdersQuestion.Everything)).Rows.Single(r => r.Serial == "U-1").PriceMinor);
    }

    private static OrdersQuestion Part(OrdersPart part) => OrdersQuestion.Everything with { Part = part };

    private static string Serials(Slice.Screen screen, bool sorted = true)
    {
        var serials = screen.Rows.Select(r => r.Serial);
        return string.Join(' ', sorted ? serials.Order(StringComparer.Ordinal) : serials);
    }

    private static Task<Slice.Screen> OpenAsync(UnitBook book, OrdersQuestion asked, PersonActor? by = null) =>
        book.Clinic.UseAsync<Slice, Slice.Screen>(by ?? book.AtDesk, s => s.OpenAsync(asked, Cancel));

    private Task<UnitBook> OpenAsync() =>
        UnitBook.OpenAsync(
            server,
            b =>
            {
                HairSystem On(string serial, int daysAgo, Client client)
                {
                    var unit = b.Draft(serial, client);
                    b.Order($"for {serial}", Today.PlusDays(-daysAgo), unit);
                    return unit;
                }

                b.Draft("U-draft", b.Una, b.OtherKind);
                On("U-new", 2, b.Una);
                On("U-far", 2, b.Far);
                On("U-silent", 8, b.Ben);
                var late = On("U-late", 70, b.Una);
                late.AddDeliveryPromise(Guid.CreateVersion7(), Today.PlusDays(-14), Today.PlusDays(-60));
                late.AddDeliveryPromise(Guid.CreateVersion7(), Today.PlusDays(-4), Today.PlusDays(-20));
                var asked = On("U-asked", 3, b.Ben);
                b.Scene.Db.UnitQuestions.Add(new UnitQuestion(Guid.CreateVersion7(), asked.Id, Today.PlusDays(-1), "Which colour?"));
                b.Arrived("U-here", b.Una);
                b.InHouse("U-shelf", b.Una);
                var away = b.InHouse("U-away", b.Una);
                away.SendForRepair(
                    Today.PlusDays(-5),
                    new RepairTrip(RepairKind.Rim, "Workshop North", Today.PlusDays(9), null),
                    new UnitStepEntry(Guid.CreateVersion7(), Today, b.Scene.Now, b.Desk.Id)
                );
            }
        );
}
