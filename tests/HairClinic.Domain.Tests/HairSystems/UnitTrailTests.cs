using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.HairSystems;

/// <summary>Each step a person writes: its day, what a refusal leaves, the line in the trail, and how it is taken back. Common practice, no source.</summary>
public sealed partial class UnitTrailTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly Guid Salon = Guid.CreateVersion7();
    private static readonly Guid Writer = Guid.CreateVersion7();
    private Instant _now = Instant.FromUtc(2027, 2, 3, 9, 0);

    [Fact]
    public void No_step_lies_in_the_future_or_before_the_one_it_follows_and_a_refused_one_changes_nothing()
    {
        var unit = OnOrder(Today.PlusDays(-30));

        Refused.Saying("{0} is in the future: choose today or earlier.", () => Receive(unit, Today.PlusDays(1)));
        Refused.Saying("Unit {0}: the day of “{1}” cannot lie before the day of “{2}”.", () => Receive(unit, Today.PlusDays(-31)));

        Assert.Equal((UnitState.Ordered, 0, 1), (unit.State, unit.Arrivals.Count, unit.Steps.Count));
        Receive(unit, Today.PlusDays(-30));
        Assert.Equal((UnitState.Arrived, UnitPlace.Salon, (Guid?)Salon), (unit.State, unit.Place, unit.PlaceSalonId));
    }

    [Fact]
    public void A_step_says_who_wrote_it_and_what_was_before_and_after()
    {
        var unit = OnOrder(Today.PlusDays(-30));

        var step = Receive(unit, Today);

        Assert.Equal(
            (UnitStepKind.Arrived, Today, (Guid?)Writer, UnitState.Ordered, UnitState.Arrived),
            (step.Kind, step.On, step.RecordedBy, step.Before.State, step.After.State)
        );
        Assert.Same(step, unit.Steps[^1]);
    }

    [Fact]
    public void After_its_last_day_on_a_head_comes_what_follows()
    {
        var unit = InHouse();
        unit.PutOn(Today.PlusDays(-20));
        unit.TakeOff(Salon);
        var entry = Entry() with { LastOffOn = Today.PlusDays(-2) };

        Refused.Saying(
            "Unit {0} was on a head until {1}: choose that day or later.",
            () => unit.LeaveService(UnitState.Retired, Today.PlusDays(-3), "worn out", entry)
        );
        unit.LeaveService(UnitState.Retired, Today.PlusDays(-2), "worn out", entry);

        Assert.Equal(UnitState.Retired, unit.State);
    }

    [Fact]
    public void Nothing_is_accepted_that_was_not_held_against_its_order()
    {
        var unit = OnOrder(Today.PlusDays(-30));

        Refused.Saying(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => Inspect(unit, ArrivalFindings.AsOrdered)
        );
        Receive(unit, Today);
        Refused.Saying(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => unit.NotePreparation(Today, Entry())
        );
        Inspect(unit, ArrivalFindings.AsOrdered);

        Assert.Equal((UnitState.Accepted, (LocalDate?)Today), (unit.State, unit.Dates.AcceptedOn));
        Assert.Equal((ArrivalDecision.Accepted, true), (unit.CurrentArrival!.Decision, unit.CurrentArrival.BaseAsOrdered));
    }

    [Fact]
    public void A_decision_follows_from_what_was_seen()
    {
        Refused.Saying(
            "Something is not as ordered: accept it with a note, or send it back.",
            () => Findings(ArrivalDecision.Accepted, kind: false)
        );
        Refused.Saying("Write what is wrong with it.", () => Findings(ArrivalDecision.AcceptedWithNote, kind: false));
        Refused.Saying("Write what is wrong with it.", () => Findings(ArrivalDecision.Refused, kind: false));
        Refused.Saying("Say who pays for making it again.", () => Findings(ArrivalDecision.Remake, kind: false, note: "wrong base"));

        Assert.Equal("as agreed", Findings(ArrivalDecision.AcceptedWithNote, kind: false, note: "as agreed").Note);
    }

    /// <summary>Seven days from arrival, as one of the terms that were seen has it; the workshop's own row counts.</summary>
    [Fact]
    public void The_clock_of_a_claim_runs_from_the_day_it_came()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        Receive(unit, Today.PlusDays(-2), claimDays: 7);

        Assert.Equal(
            (Today.PlusDays(5), 5, -1),
            (
                unit.CurrentArrival!.ClaimUntil,
                unit.CurrentArrival.ClaimDaysLeft(Today),
                unit.CurrentArrival.ClaimDaysLeft(Today.PlusDays(6))
            )
        );
    }

    [Fact]
    public void A_remake_keeps_its_first_arrival_who_pays_and_waits_anew()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        Receive(unit, Today.PlusDays(-2));
        unit.InspectArrival(
            Today.PlusDays(-1),
            Findings(ArrivalDecision.Remake, kind: false, note: "wrong base", payer: RemakePayer.Workshop),
            Today.PlusDays(28),
            Entry()
        );

        Assert.Equal((UnitState.Remake, (int?)1, UnitPlace.Workshop), (unit.State, unit.RemadeTimes, unit.Place));
        Assert.Equal((LocalDate?)Today.PlusDays(-1), unit.WaitingSince);
        Assert.Equal((RemakePayer.Workshop, "wrong base"), (unit.CurrentArrival!.RemakePaidBy, unit.CurrentArrival.Note));
        Assert.Equal(Today.PlusDays(28), unit.Promises[^1].PromisedFor);
        Refused.Saying("Unit {0}: the day of “{1}” cannot lie before the day of “{2}”.", () => Receive(unit, Today.PlusDays(-2)));
        Receive(unit, Today);
        Assert.Equal([1, 2], unit.Arrivals.Select(a => a.Number));
        Assert.Null(unit.CurrentArrival!.Decision);
    }

    [Fact]
    public void A_promise_lies_neither_before_its_order_nor_before_it_was_given()
    {
        var unit = OnOrder(Today.PlusDays(-30));

        Refused.Saying(
            "It was ordered on {0}: nothing can be promised before that.",
            () => unit.NotePromise(Today.PlusDays(-31), Today.PlusDays(9), "Ines", null, Entry())
        );
        Refused.Saying(
            "A day that was promised on {0} cannot lie before it.",
            () => unit.NotePromise(Today, Today.PlusDays(-1), "Ines", null, Entry())
        );
        unit.NotePromise(Today.PlusDays(-30), Today.PlusDays(9), " Ines ", null, Entry());
        Refused.Saying(
            "That day was promised already.",
            () => unit.NotePromise(Today.PlusDays(-30), Today.PlusDays(9), "Ines", null, Entry())
        );

        Assert.Equal("Ines", Assert.Single(unit.Promises).SaidBy);
    }

    [Fact]
    public void What_came_off_a_head_is_to_be_cleaned_and_goes_on_one_when_somebody_says_it_is_clean()
    {
        var unit = InHouse();
        Assert.True(unit.IsReady);
        unit.PutOn(Today.PlusDays(-20));
        Refused.Saying(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => unit.MarkCleaning(UnitCleaning.Clean, Today, Entry())
        );
        unit.TakeOff(Salon);

        Assert.Equal((false, UnitCleaning.ToBeCleaned, UnitPlace.Salon), (unit.IsReady, unit.Cleaning, unit.Place));
        unit.MarkCleaning(UnitCleaning.Drying, Today, Entry());
        Assert.False(unit.IsReady);
        unit.MarkCleaning(UnitCleaning.Clean, Today, Entry());
        Assert.True(unit.IsReady);
    }

    [Fact]
    public void Away_for_a_repair_it_is_no_hair_in_house_and_back_it_is_to_be_cleaned()
    {
        var unit = InHouse();
        unit.SendForRepair(Today.PlusDays(-9), new RepairTrip(RepairKind.Rim, "Workshop North", Today.PlusDays(5), null), Entry());

        Assert.Equal((UnitState.Away, false, false), (unit.State, unit.State.IsOnHeadOrInHouse(), unit.State.IsBondable()));
        Refused.Saying("It went out on {0}, so it cannot be back before.", () => Back(unit, Today.PlusDays(-10)));
        Back(unit, Today);

        Assert.Equal((UnitState.Accepted, UnitCleaning.ToBeCleaned), (unit.State, unit.Cleaning));
        Assert.Equal((Today, 4_000L, "GBP"), (unit.Repairs[0].DoneOn, unit.Repairs[0].CostMinor, unit.Repairs[0].Currency));
    }

    [Fact]
    public void Only_what_is_nobodys_clean_and_here_is_lent_and_it_comes_back_to_be_cleaned()
    {
        var (stock, own) = (InHouse(client: null), InHouse());
        Refused.Saying("Unit {0} is another client's.", () => own.LendOut(Today, Entry()));
        stock.MarkCleaning(UnitCleaning.ToBeCleaned, Today.PlusDays(-9), Entry());
        Refused.Saying("Unit {0} is not clean yet. Clean it, say so, and then lend it.", () => stock.LendOut(Today, Entry()));
        stock.MarkCleaning(UnitCleaning.Clean, Today.PlusDays(-9), Entry());
        var loan = new UnitLoan(Guid.CreateVersion7(), stock.Id, Writer, Today.PlusDays(-8), Today.PlusDays(6));
        stock.LendOut(Today.PlusDays(-8), Entry());
        Assert.Equal((UnitState.Lent, UnitPlace.Client, 6), (stock.State, stock.Place, loan.DaysLeft(Today)));

        stock.TakeBackLoan(Today, Salon, loan, Entry());

        Assert.Equal((UnitState.Accepted, UnitCleaning.ToBeCleaned, false), (stock.State, stock.Cleaning, loan.IsOpen));
    }

    [Fact]
    public void A_lost_unit_that_is_found_is_as_it_was_and_one_lost_in_the_post_has_then_arrived()
    {
        var (here, sent) = (InHouse(), OnOrder(Today.PlusDays(-30)));
        here.LeaveService(UnitState.Lost, Today.PlusDays(-3), "not in the drawer", Entry());
        sent.LeaveService(UnitState.Lost, Today.PlusDays(-3), "parcel lost", Entry());
        Assert.Null(here.Place);

        Refused.Saying("It has been gone since {0}: choose that day or later.", () => here.Find(Today.PlusDays(-4), Salon, Entry()));
        here.Find(Today, Salon, Entry());
        sent.Find(Today, Salon, Entry());

        Assert.Equal((UnitState.Accepted, UnitCleaning.ToBeCleaned, (LocalDate?)null), (here.State, here.Cleaning, here.Dates.RetiredOn));
        Assert.Equal((UnitState.Arrived, (LocalDate?)Today), (sent.State, sent.Dates.ArrivedOn));
    }

    [Theory]
    [InlineData(UnitState.Retired)]
    [InlineData(UnitState.Damaged)]
    [InlineData(UnitState.ReturnedToClient)]
    [InlineData(UnitState.EmergencySpare)]
    public void What_is_not_here_leaves_service_only_as_lost_or_called_off(UnitState end)
    {
        var unit = OnOrder(Today.PlusDays(-30));

        Refused.Saying(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => unit.LeaveService(end, Today, "x", Entry())
        );
        unit.LeaveService(UnitState.Cancelled, Today, "hair grows again", Entry());

        Assert.Equal((UnitState.Cancelled, true, (UnitPlace?)null), (unit.State, unit.State.IsGone(), unit.Place));
    }

    [Fact]
    public void The_last_step_is_taken_back_with_a_reason_and_the_step_stays()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        var step = Receive(unit, Today.PlusDays(-1));

        Refused.Saying("Say what was wrong with it.", () => TakeBack(unit, step, because: " "));
        TakeBack(unit, step, because: "another client’s parcel");

        Assert.Equal((UnitState.Ordered, UnitPlace.Workshop, 0), (unit.State, unit.Place, unit.Arrivals.Count));
        Assert.Equal((false, "another client’s parcel"), (step.Stands, step.TakenBackBecause));
        Refused.Saying("It was undone already.", () => TakeBack(unit, step));
    }

    [Fact]
    public void What_something_was_built_on_is_not_taken_back()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        var ordered = unit.Steps[0];
        unit.NotePromise(Today, Today.PlusDays(9), null, null, Entry());

        Refused.Saying("Something newer is written of unit {0}. Undo that first.", () => TakeBack(unit, ordered));
        TakeBack(unit, unit.Steps[1]);
        Assert.Empty(unit.Promises);
        TakeBack(unit, ordered);

        Assert.Equal((UnitState.Specified, (Guid?)null), (unit.State, unit.OrderId));
    }

    [Theory]
    [InlineData(true, 0, false, true)]
    [InlineData(true, -1, false, false)]
    [InlineData(false, 0, false, false)]
    [InlineData(false, -9, true, true)]
    public void On_the_day_whoever_wrote_it_takes_it_back_and_later_a_manager(bool own, int writtenDays, bool manager, bool may)
    {
        var unit = OnOrder(Today.PlusDays(-30));
        var step = Receive(unit, Today);
        void Back() =>
            unit.TakeBack(
                step,
                new CorrectionRight(Today.PlusDays(writtenDays), manager),
                new UnitStepEntry(Guid.CreateVersion7(), Today, _now, own ? Writer : Guid.CreateVersion7(), Note: "wrong")
            );

        if (may)
            Back();
        else
            Refused.Saying("Only whoever wrote it can change it, and only on the same day. Ask a manager or the owner.", Back);

        Assert.Equal(may, !step.Stands);
    }

    [Fact]
    public void Of_a_remake_taken_back_its_promise_and_its_decision_go()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        Receive(unit, Today.PlusDays(-2));
        var sent = unit.InspectArrival(
            Today,
            Findings(ArrivalDecision.Remake, kind: false, note: "wrong base", payer: RemakePayer.Workshop),
            Today.PlusDays(28),
            Entry()
        );

        TakeBack(unit, sent);

        Assert.Equal((UnitState.Arrived, 0, (int?)0), (unit.State, unit.Promises.Count, unit.RemadeTimes));
        Assert.Null(unit.CurrentArrival!.Decision);
    }

    [Fact]
    public void In_house_nothing_is_done_before_the_day_it_came()
    {
        var stock = InHouse(client: null);
        var early = Today.PlusDays(-61);
        Action[] steps =
        [
            () => stock.MarkCleaning(UnitCleaning.Clean, early, Entry()),
            () => stock.MoveTo(UnitPlace.Salon, Salon, "drawer 3", early, Entry()),
            () => stock.LendOut(early, Entry()),
            () => stock.GiveToClient(Writer, early, Entry()),
            () => stock.SendForRepair(early, new RepairTrip(RepairKind.Rim, null, null, null), Entry()),
        ];

        Assert.All(steps, step => Refused.Saying("Unit {0} was not here yet on {1}.", step));
        Assert.Empty(stock.Steps);
    }

    [Fact]
    public void A_spare_kept_for_an_emergency_is_one_again_when_it_is_found()
    {
        var unit = InHouse();
        unit.LeaveService(UnitState.EmergencySpare, Today.PlusDays(-20), "thin", Entry());
        unit.LeaveService(UnitState.Lost, Today.PlusDays(-3), "not in the drawer", Entry());

        unit.Find(Today, Salon, Entry());

        Assert.Equal((UnitState.EmergencySpare, (LocalDate?)Today.PlusDays(-20)), (unit.State, unit.Dates.RetiredOn));
    }

    [Fact]
    public void Lost_on_its_way_to_a_repair_and_found_it_can_be_sent_and_come_back_again()
    {
        var unit = InHouse();
        unit.SendForRepair(Today.PlusDays(-20), new RepairTrip(RepairKind.Rim, null, null, null), Entry());
        unit.LeaveService(UnitState.Lost, Today.PlusDays(-15), "parcel lost", Entry());
        unit.Find(Today.PlusDays(-10), Salon, Entry());
        unit.SendForRepair(Today.PlusDays(-5), new RepairTrip(RepairKind.NewFront, null, null, null), Entry());

        Back(unit, Today);

        Assert.Equal([(RepairKind.Rim, (LocalDate?)null), (RepairKind.NewFront, Today)], unit.Repairs.Select(r => (r.Kind, r.DoneOn)));
        TakeBack(unit, unit.Steps[^1]);
        Assert.Equal((UnitState.Away, 0), (unit.State, unit.Repairs.Count(r => r.DoneOn is not null)));
    }

    // An order and its promise are written at once: the promise is the later.
    [Fact]
    public void Of_two_steps_of_one_moment_the_later_on_the_way_is_taken_back_first()
    {
        var unit = OnOrder(Today.PlusDays(-30));
        var ordered = unit.Steps[0];
        var entry = new UnitStepEntry(Guid.CreateVersion7(), Today, ordered.RecordedAt, Writer);
        var promised = unit.NotePromise(Today, Today.PlusDays(9), null, null, entry);

        Refused.Saying("Something newer is written of unit {0}. Undo that first.", () => TakeBack(unit, ordered));
        TakeBack(unit, promised);
        TakeBack(unit, ordered);

        Assert.Equal(UnitState.Specified, unit.State);
    }

    private HairSystem OnOrder(LocalDate on)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", Guid.CreateVersion7(), Guid.CreateVersion7(), on);
        new WorkshopOrder(Guid.CreateVersion7(), "7", Guid.CreateVersion7(), Salon, on, "GBP").Send(
            [(unit, 60_000)],
            Guid.CreateVersion7,
            Entry()
        );
        return unit;
    }

    private static HairSystem InHouse() => InHouse(Guid.CreateVersion7());

    private static HairSystem InHouse(Guid? client) =>
        HairSystem.AddToBook(
            Guid.CreateVersion7(),
            "U-2",
            client,
            Guid.CreateVersion7(),
            UnitOrigin.ReadyMade,
            Today,
            Today.PlusDays(-60),
            Salon
        );

    // A second passes between any two.
    private UnitStepEntry Entry() => new(Guid.CreateVersion7(), Today, _now += Duration.FromSeconds(1), Writer);

    private UnitStep Receive(HairSystem unit, LocalDate on, int? claimDays = null) =>
        unit.Receive(on, Salon, damaged: false, null, claimDays, Entry());

    private void Inspect(HairSystem unit, ArrivalFindings found) => unit.InspectArrival(Today, found, null, Entry());

    private void Back(HairSystem unit, LocalDate on) => unit.BringBackFromRepair(on, Salon, 4_000, "GBP", Entry());

    private void TakeBack(HairSystem unit, UnitStep step, string because = "wrong") =>
        unit.TakeBack(step, Own, Entry() with { Note = because });

    private UnitStep CorrectDay(HairSystem unit, UnitStep step, LocalDate to, params (LocalDate On, LocalDate? Off)[] onHead) =>
        unit.CorrectDay(step, to, Own, onHead, Entry() with { Note = "typed wrong" });

    private static readonly CorrectionRight Own = new(Today, MayCorrectOthers: false);

    private static ArrivalFindings Findings(ArrivalDecision decision, bool kind, string? note = null, RemakePayer? payer = null) =>
        new(kind, baseAsOrdered: true, priceAsOrdered: true, altered: false, decision, note, payer);
}
