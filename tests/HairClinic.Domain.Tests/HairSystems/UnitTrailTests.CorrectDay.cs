using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.HairSystems;

// A day that was written wrong, whatever came after it.
public sealed partial class UnitTrailTests
{
    [Fact]
    public void The_day_of_an_earlier_step_is_corrected_under_what_came_after_it()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        var arrived = Receive(unit, Today.PlusDays(-2), claimDays: 14);
        Inspect(unit, ArrivalFindings.AsOrdered);

        var correction = CorrectDay(unit, arrived, Today.PlusDays(-5));

        var day = Today.PlusDays(-5);
        Assert.Equal((day, UnitState.Accepted, (LocalDate?)day), (unit.DayOf(arrived), unit.State, unit.Dates.ArrivedOn));
        Assert.Equal((day, (LocalDate?)day.PlusDays(14)), (unit.CurrentArrival!.ArrivedOn, unit.CurrentArrival.ClaimUntil));
        Assert.Equal(
            (Today.PlusDays(-2), UnitStepKind.DayCorrected, "typed wrong", (Guid?)arrived.Id),
            (arrived.On, correction.Kind, correction.Note, correction.CorrectsId)
        );
    }

    [Fact]
    public void A_corrected_day_does_not_change_places_with_another()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        var arrived = Receive(unit, Today.PlusDays(-8));
        unit.InspectArrival(Today.PlusDays(-6), ArrivalFindings.AsOrdered, null, Entry());

        Refused.Saying("It came after “{0}” on {1}: choose that day or later.", () => CorrectDay(unit, arrived, Today.PlusDays(-31)));
        Refused.Saying("“{0}” came after it on {1}: choose that day or earlier.", () => CorrectDay(unit, arrived, Today.PlusDays(-5)));
        Refused.Saying("{0} is in the future: choose today or earlier.", () => CorrectDay(unit, unit.Steps[^1], Today.PlusDays(1)));
        Refused.Saying("That is the day it has already.", () => CorrectDay(unit, arrived, Today.PlusDays(-8)));

        Assert.Equal((3, (LocalDate?)Today.PlusDays(-8)), (unit.Steps.Count, unit.Dates.ArrivedOn));
        CorrectDay(unit, arrived, Today.PlusDays(-6));
        CorrectDay(unit, arrived, Today.PlusDays(-30));
        Assert.Equal(Today.PlusDays(-30), unit.DayOf(arrived));
    }

    [Fact]
    public void A_corrected_day_stays_on_its_side_of_the_days_on_a_head()
    {
        var unit = InHouse();
        var cleaned = unit.MarkCleaning(UnitCleaning.Clean, Today.PlusDays(-10), Entry());
        (LocalDate, LocalDate?)[] heads = [(Today.PlusDays(-50), Today.PlusDays(-12)), (Today.PlusDays(-7), null)];

        Refused.Saying(
            "Unit {0} was on a head until {1}: choose that day or later.",
            () => CorrectDay(unit, cleaned, Today.PlusDays(-13), heads)
        );
        Refused.Saying(
            "Unit {0} has been on a head since {1}: choose that day or earlier.",
            () => CorrectDay(unit, cleaned, Today.PlusDays(-6), heads)
        );
        CorrectDay(unit, cleaned, Today.PlusDays(-12), heads);
        CorrectDay(unit, cleaned, Today.PlusDays(-7), heads);

        Refused.Saying("Unit {0} was not here yet on {1}.", () => CorrectDay(unit, cleaned, Today.PlusDays(-61)));
    }

    [Fact]
    public void A_correction_is_taken_back_before_what_it_corrects()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        var arrived = Receive(unit, Today.PlusDays(-2), claimDays: 14);
        CorrectDay(unit, arrived, Today.PlusDays(-5));
        var second = CorrectDay(unit, arrived, Today.PlusDays(-9));

        Refused.Saying("Something newer is written of unit {0}. Undo that first.", () => TakeBack(unit, arrived));
        Refused.Saying("Change the date of the entry itself.", () => CorrectDay(unit, second, Today));
        TakeBack(unit, second);
        Assert.Equal((Today.PlusDays(-5), Today.PlusDays(-5)), (unit.DayOf(arrived), unit.CurrentArrival!.ArrivedOn));
        TakeBack(unit, unit.Steps[^2]);

        Assert.Equal(
            (Today.PlusDays(-2), (LocalDate?)Today.PlusDays(-2), (LocalDate?)Today.PlusDays(12)),
            (unit.CurrentArrival.ArrivedOn, unit.Dates.ArrivedOn, unit.CurrentArrival.ClaimUntil)
        );
        TakeBack(unit, arrived);
        Assert.Equal(UnitState.Ordered, unit.State);
    }

    [Fact]
    public void Of_an_earlier_round_of_a_remake_only_its_arrival_changes()
    {
        var unit = OnOrder(Today.PlusDays(-60));
        var first = Receive(unit, Today.PlusDays(-40), claimDays: 14);
        var sentBack = unit.InspectArrival(
            Today.PlusDays(-38),
            Findings(ArrivalDecision.Remake, kind: false, note: "wrong base", payer: RemakePayer.Workshop),
            Today.PlusDays(-10),
            Entry()
        );
        Receive(unit, Today.PlusDays(-9), claimDays: 14);

        CorrectDay(unit, first, Today.PlusDays(-41));
        CorrectDay(unit, sentBack, Today.PlusDays(-39));

        Assert.Equal([Today.PlusDays(-41), Today.PlusDays(-9)], unit.Arrivals.Select(a => a.ArrivedOn));
        Assert.Equal(((LocalDate?)Today.PlusDays(-39), (LocalDate?)null), (unit.Arrivals[0].InspectedOn, unit.Arrivals[1].InspectedOn));
        Assert.Equal(
            ((LocalDate?)Today.PlusDays(-9), (LocalDate?)Today.PlusDays(-39), (LocalDate?)Today.PlusDays(-39)),
            (unit.Dates.ArrivedOn, unit.Dates.SentBackOn, unit.Promises[0].SaidOn)
        );
    }

    [Fact]
    public void Days_of_a_repair_away_and_of_leaving_service_are_corrected_where_they_are_kept()
    {
        var unit = InHouse();
        var sent = unit.SendForRepair(Today.PlusDays(-20), new RepairTrip(RepairKind.Rim, null, Today.PlusDays(-15), null), Entry());
        Back(unit, Today.PlusDays(-10));
        var back = unit.Steps[^1];
        var retired = unit.LeaveService(UnitState.Retired, Today, "thin", Entry());

        Refused.Saying("It cannot be back before it goes out, on {0}.", () => CorrectDay(unit, sent, Today.PlusDays(-14)));
        CorrectDay(unit, sent, Today.PlusDays(-22));
        CorrectDay(unit, back, Today.PlusDays(-11));
        CorrectDay(unit, retired, Today.PlusDays(-1));

        Assert.Equal(
            ((LocalDate?)Today.PlusDays(-22), (LocalDate?)Today.PlusDays(-11), (LocalDate?)Today.PlusDays(-1)),
            (unit.Repairs[0].SentOn, unit.Repairs[0].DoneOn, unit.Dates.RetiredOn)
        );
    }

    [Fact]
    public void Days_of_a_loan_are_corrected_with_its_steps()
    {
        var stock = InHouse(client: null);
        var lent = stock.LendOut(Today.PlusDays(-20), Entry());
        var loan = new UnitLoan(lent.Id, stock.Id, Writer, Today.PlusDays(-20), Today.PlusDays(-10));
        var back = stock.TakeBackLoan(Today.PlusDays(-8), Salon, loan, Entry());
        void Correct(UnitStep step, int days) =>
            stock.CorrectDay(step, Today.PlusDays(days), Own, [], Entry() with { Note = "typed wrong" }, loan);

        Refused.Saying("A unit that is lent on {0} is due back on a later day.", () => Correct(lent, -10));
        Correct(lent, -21);
        Correct(back, -9);

        Assert.Equal((Today.PlusDays(-21), (LocalDate?)Today.PlusDays(-9)), (loan.LentOn, loan.BackOn));
        stock.TakeBack(stock.Steps[^1], Own, Entry() with { Note = "right at first" }, loan);
        Assert.Equal(Today.PlusDays(-8), loan.BackOn);
    }

    [Fact]
    public void An_order_keeps_the_order_of_its_own_days()
    {
        var order = new WorkshopOrder(Guid.CreateVersion7(), "7", Guid.CreateVersion7(), Salon, Today.PlusDays(-30), "GBP");
        order.Promise(Guid.CreateVersion7(), Today.PlusDays(9), Today.PlusDays(-28), "Kim", Today);
        order.Acknowledge(Today.PlusDays(-20), Today);
        order.Ship(Today.PlusDays(-10), null, Today);
        var promise = order.Promises[0].Id;

        Refused.Saying(
            "Order {0} went out on {1}: choose that day or later.",
            () => order.CorrectDay(UnitStepKind.Ordered, null, Today.PlusDays(-27), Today)
        );
        order.CorrectDay(UnitStepKind.Ordered, null, Today.PlusDays(-29), Today);
        order.CorrectDay(UnitStepKind.Promised, promise, Today.PlusDays(-26), Today);
        order.CorrectDay(UnitStepKind.Acknowledged, null, Today.PlusDays(-19), Today);
        Refused.Saying(
            "Order {0} was confirmed on {1}: it cannot be sent before.",
            () => order.CorrectDay(UnitStepKind.Shipped, null, Today.PlusDays(-21), Today)
        );

        Assert.Equal(
            ((LocalDate?)Today.PlusDays(-29), (LocalDate?)Today.PlusDays(-19), (LocalDate?)Today.PlusDays(-26)),
            (order.SentOn, order.AcknowledgedOn, order.DayOf(UnitStepKind.Promised, promise))
        );
    }
}
