using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using NodaTime;

namespace HairClinic.Domain.Tests.Orders;

/// <summary>An order as a thing of its own, and how what is said of it comes to its units. Common practice, no source.</summary>
public sealed class WorkshopOrderTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Instant _now = Instant.FromUtc(2027, 2, 3, 9, 0);

    [Fact]
    public void It_sends_one_unit_or_several_with_their_prices_in_one_currency()
    {
        var (one, other) = (Draft("U-1"), Draft("U-2"));
        var order = Order();

        order.Send([(one, 60_000), (other, null)], Guid.CreateVersion7, Entry());

        Assert.Equal((2, UnitState.Ordered, UnitState.Ordered), (order.UnitCount, one.State, other.State));
        Assert.Equal((order.Id, (long?)60_000, "GBP", (LocalDate?)Today), (one.OrderId, one.PriceMinor, one.Currency, one.Dates.OrderedOn));
    }

    [Fact]
    public void What_cannot_be_sent_is_refused()
    {
        Refused.Saying("Choose the units that are ordered.", () => Order().Send([], Guid.CreateVersion7, Entry()));
        Refused.Saying(
            "An order takes {0} units at most.",
            () => Order().Send([.. Enumerable.Range(1, 51).Select(i => (Draft($"U-{i}"), (long?)null))], Guid.CreateVersion7, Entry())
        );
        var elsewhere = Draft("U-1");
        elsewhere.SetPrice(60_000, "EUR");
        Refused.Saying(
            "The price of {0} is in {1}, and the order is in {2}.",
            () => Order().Send([(elsewhere, null)], Guid.CreateVersion7, Entry())
        );
        var twice = Draft("U-2");
        Order().Send([(twice, null)], Guid.CreateVersion7, Entry());
        Refused.Saying(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => Order().Send([(twice, null)], Guid.CreateVersion7, Entry())
        );
        Order().Send([.. Enumerable.Range(1, 50).Select(i => (Draft($"U-{i}"), (long?)null))], Guid.CreateVersion7, Entry());
    }

    [Fact]
    public void What_the_workshop_says_of_the_whole_comes_to_each_unit_once_but_not_to_one_that_is_made_again()
    {
        var (one, remade) = (Draft("U-1"), Draft("U-2"));
        var order = new WorkshopOrder(Guid.CreateVersion7(), "7", Guid.CreateVersion7(), Guid.CreateVersion7(), Today.PlusDays(-60), "GBP");
        order.Send([(one, null), (remade, null)], Guid.CreateVersion7, Entry());
        remade.Receive(Today.PlusDays(-9), Guid.CreateVersion7(), damaged: false, null, null, Entry());
        remade.InspectArrival(
            Today.PlusDays(-8),
            new ArrivalFindings(false, true, true, false, ArrivalDecision.Remake, "wrong", RemakePayer.Workshop),
            null,
            Entry()
        );
        order.Acknowledge(Today.PlusDays(-50), Today);
        order.Promise(Guid.CreateVersion7(), Today.PlusDays(9), Today.PlusDays(-50), "Ines", Today);

        Assert.True(order.Spread(one, Guid.CreateVersion7, Entry()));
        Assert.False(order.Spread(one, Guid.CreateVersion7, Entry()));
        Assert.False(order.Spread(remade, Guid.CreateVersion7, Entry()));
        order.Promise(Guid.CreateVersion7(), Today.PlusDays(20), Today, null, Today);
        order.Ship(Today, " P-1 ", Today);
        Assert.True(order.Spread(one, Guid.CreateVersion7, Entry()));

        Assert.Equal((UnitState.Shipped, "P-1"), (one.State, order.Parcel));
        Assert.Equal([Today.PlusDays(9), Today.PlusDays(20)], one.Promises.Select(p => p.PromisedFor));
        Assert.Empty(remade.Promises);
    }

    [Fact]
    public void Nothing_is_said_of_an_order_before_it_went_out_or_twice()
    {
        var order = Order();

        Refused.Saying("Order {0} went out on {1}: choose that day or later.", () => order.Acknowledge(Today.PlusDays(-1), Today));
        Refused.Saying(
            "Order {0} went out on {1}: choose that day or later.",
            () => order.Promise(Guid.CreateVersion7(), Today, Today.PlusDays(-1), null, Today)
        );
        Refused.Saying("{0} is in the future: choose today or earlier.", () => order.Ship(Today.PlusDays(1), null, Today));
        order.Acknowledge(Today, Today);
        order.Ship(Today, null, Today);
        Refused.Saying("Order {0} was confirmed on {1} already.", () => order.Acknowledge(Today, Today));
        Refused.Saying("Order {0} was sent on {1} already.", () => order.Ship(Today, null, Today));
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(90, true)]
    [InlineData(-1, false)]
    [InlineData(91, false)]
    public void A_workshop_takes_claims_for_so_many_days(int days, bool may)
    {
        var workshop = new Workshop(Guid.CreateVersion7(), "Workshop North");
        Assert.Equal(7, workshop.ClaimDays);

        if (may)
            workshop.SetClaimDays(days);
        else
            Refused.Saying("A workshop takes claims for 0 to 90 days.", () => workshop.SetClaimDays(days));

        Assert.Equal(may ? days : 7, workshop.ClaimDays);
    }

    private static WorkshopOrder Order() => new(Guid.CreateVersion7(), "7", Guid.CreateVersion7(), Guid.CreateVersion7(), Today, "GBP");

    private static HairSystem Draft(string serial) =>
        new(Guid.CreateVersion7(), serial, Guid.CreateVersion7(), Guid.CreateVersion7(), Today.PlusDays(-70));

    private UnitStepEntry Entry() => new(Guid.CreateVersion7(), Today, _now += Duration.FromSeconds(1), Guid.CreateVersion7());
}
