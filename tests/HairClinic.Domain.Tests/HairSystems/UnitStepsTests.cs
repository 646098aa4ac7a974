using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.HairSystems;

/// <summary>A unit's way: from where each step may be taken, what it writes, and what is refused. Common practice, no source.</summary>
public sealed class UnitStepsTests
{
    private static readonly LocalDate Day = new(2027, 2, 3);
    private static readonly Guid Place = Guid.CreateVersion7();

    /// <summary>Each step with the states it may be taken from and the state it leads to.</summary>
    private static readonly (string Step, Action<HairSystem> Take, UnitState[] From, UnitState To)[] Steps =
    [
        ("ordered", u => u.Order(Day), [UnitState.Specified], UnitState.Ordered),
        ("acknowledged", u => u.AcknowledgeOrder(Day), [UnitState.Ordered], UnitState.Acknowledged),
        ("shipped", u => u.Ship(Day), InFlight, UnitState.Shipped),
        ("arrive", u => u.Arrive(Day, Place), InFlight, UnitState.Arrived),
        ("inspected", u => u.Inspect(Day), [UnitState.Arrived], UnitState.Inspected),
        ("accepted", u => u.Accept(Day), [UnitState.Inspected], UnitState.Accepted),
        ("sent back", u => u.SendBackForRemake(Guid.CreateVersion7(), Day, Day.PlusDays(30)), [UnitState.Inspected], UnitState.Remake),
        ("prepared", u => u.Prepare(Day), [UnitState.Accepted], UnitState.Prepared),
        ("bonded", u => u.PutOn(Day), Bondable, UnitState.Bonded),
        ("taken off", u => u.TakeOff(), [UnitState.Bonded], UnitState.Resting),
    ];

    private static UnitState[] InFlight => [UnitState.Ordered, UnitState.Acknowledged, UnitState.Shipped, UnitState.Remake];

    private static UnitState[] Bondable => [UnitState.Accepted, UnitState.Prepared, UnitState.Resting, UnitState.EmergencySpare];

    public static TheoryData<string, UnitState> EachStepFromEachState =>
        new(Steps.SelectMany(s => Enum.GetValues<UnitState>().Select(state => (s.Step, state))));

    [Theory]
    [MemberData(nameof(EachStepFromEachState))]
    public void A_step_is_taken_from_where_it_may_and_else_refused_with_nothing_changed(string step, UnitState state)
    {
        var (_, take, from, to) = Steps.Single(s => s.Step == step);
        var unit = In(state);
        var before = unit.Dates;

        if (from.Contains(state))
        {
            take(unit);
            Assert.Equal(to, unit.State);
        }
        else
        {
            var refusal = Assert.Throws<Refusal>(() => take(unit));
            Assert.Equal(
                step == "bonded"
                    ? $"Unit U-1 is {state}: it cannot be bonded."
                    : $"Unit U-1 stands at “{state}”: this cannot be done now. Open the unit to see what comes next.",
                refusal.Message
            );
            Assert.Equal((state, before), (unit.State, unit.Dates));
        }
    }

    [Fact]
    public void A_workshop_has_an_order_to_make_since_it_was_ordered_or_sent_back()
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", Guid.CreateVersion7(), Guid.CreateVersion7(), Day);
        Assert.Null(unit.WaitingSince);
        unit.Order(Day.PlusDays(1));
        unit.AddDeliveryPromise(Guid.CreateVersion7(), Day.PlusDays(60), Day.PlusDays(3));
        Assert.Equal(Day.PlusDays(1), unit.WaitingSince);

        unit.Arrive(Day.PlusDays(61), Place);
        unit.Inspect(Day.PlusDays(62));
        unit.SendBackForRemake(Guid.CreateVersion7(), Day.PlusDays(63), Day.PlusDays(90));

        Assert.Equal(Day.PlusDays(63), unit.WaitingSince);
    }

    [Fact]
    public void Each_step_writes_its_day_and_the_earlier_ones_stay()
    {
        var unit = new HairSystem(Guid.CreateVersion7(), " U-1 ", Guid.CreateVersion7(), Guid.CreateVersion7(), Day);

        unit.Order(Day.PlusDays(1));
        unit.AcknowledgeOrder(Day.PlusDays(2));
        unit.Ship(Day.PlusDays(40));
        unit.Arrive(Day.PlusDays(45), Place);
        unit.Inspect(Day.PlusDays(46));
        unit.Accept(Day.PlusDays(47));
        unit.Prepare(Day.PlusDays(50));
        unit.PutOn(Day.PlusDays(60));
        unit.TakeOff();
        unit.PutOn(Day.PlusDays(90));

        Assert.Equal(
            new UnitDates
            {
                SpecifiedOn = Day,
                OrderedOn = Day.PlusDays(1),
                AcknowledgedOn = Day.PlusDays(2),
                ShippedOn = Day.PlusDays(40),
                ArrivedOn = Day.PlusDays(45),
                InspectedOn = Day.PlusDays(46),
                AcceptedOn = Day.PlusDays(47),
                PreparedOn = Day.PlusDays(50),
                FirstBondedOn = Day.PlusDays(60),
            },
            unit.Dates
        );
        Assert.Equal(("U-1", UnitPlace.Client, (Guid?)null), (unit.Serial, unit.Place, unit.PlaceSalonId));
    }

    [Fact]
    public void A_remake_is_counted_promised_anew_and_on_its_way_again()
    {
        var unit = In(UnitState.Arrived);
        unit.PlaceAtSalon(Place);
        unit.Inspect(Day);

        unit.SendBackForRemake(Guid.CreateVersion7(), Day, Day.PlusDays(30));

        Assert.Equal((1, true, (Guid?)null), (unit.RemadeTimes, unit.IsBeingRemade, unit.PlaceSalonId));
        var promise = Assert.Single(unit.Promises);
        Assert.Equal((1, Day.PlusDays(30), (LocalDate?)Day), (promise.Number, promise.PromisedFor, promise.SaidOn));
        unit.Ship(Day.PlusDays(20));
        Assert.True(unit.IsBeingRemade);
        unit.Arrive(Day.PlusDays(25), Place);
        Assert.False(unit.IsBeingRemade);
        unit.Inspect(Day.PlusDays(26));
        unit.SendBackForRemake(Guid.CreateVersion7(), Day.PlusDays(26), Day.PlusDays(60));
        Assert.Equal((2, 2), (unit.RemadeTimes, unit.Promises[^1].Number));
    }

    [Fact]
    public void A_first_order_on_its_way_is_no_remake()
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", null, Guid.CreateVersion7(), Day);
        unit.Order(Day);

        Assert.False(unit.IsBeingRemade);
    }

    [Theory]
    [InlineData(UnitState.Bonded, true)]
    [InlineData(UnitState.Arrived, true)]
    [InlineData(UnitState.Inspected, true)]
    [InlineData(UnitState.Accepted, true)]
    [InlineData(UnitState.Prepared, true)]
    [InlineData(UnitState.Resting, true)]
    [InlineData(UnitState.EmergencySpare, false)]
    [InlineData(UnitState.Specified, false)]
    [InlineData(UnitState.Ordered, false)]
    [InlineData(UnitState.Acknowledged, false)]
    [InlineData(UnitState.Shipped, false)]
    [InlineData(UnitState.Remake, false)]
    [InlineData(UnitState.Retired, false)]
    [InlineData(UnitState.Lost, false)]
    [InlineData(UnitState.Damaged, false)]
    [InlineData(UnitState.ReturnedToClient, false)]
    public void Hair_in_house_is_what_is_on_a_head_or_here_and_no_emergency_spare(UnitState state, bool counts) =>
        Assert.Equal(counts, state.IsOnHeadOrInHouse());

    [Theory]
    [InlineData(0, 40, 0, true)]
    [InlineData(0, 40, null, true)]
    [InlineData(0, 0, 0, true)]
    [InlineData(0, 40, 1, false)]
    [InlineData(null, 40, 0, false)]
    [InlineData(0, null, 0, false)]
    public void How_long_an_order_takes_is_told_by_what_came_once_and_was_not_made_again(
        int? ordered,
        int? arrived,
        int? remade,
        bool tells
    )
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", null, Guid.CreateVersion7(), null);
        unit.ImportState(UnitState.Arrived, new UnitDates { OrderedOn = On(ordered), ArrivedOn = On(arrived) }, null, remade);

        Assert.Equal(tells, unit.TellsOfLead);

        static LocalDate? On(int? days) => days is { } d ? Day.PlusDays(d) : null;
    }

    [Fact]
    public void A_repeat_is_a_draft_of_the_same_kind_client_and_price_that_names_what_it_repeats()
    {
        var last = new HairSystem(Guid.CreateVersion7(), "U-1", Guid.CreateVersion7(), Guid.CreateVersion7(), Day.PlusDays(-300));
        last.SetPrice(54_000, "GBP");

        var draft = HairSystem.DraftRepeatOrder(Guid.CreateVersion7(), "U-2", last, Day, "  A finer front ");

        Assert.Equal(
            (UnitState.Specified, last.ClientId, last.UnitKindId, (Guid?)last.Id, "A finer front", (long?)54_000, "GBP", (LocalDate?)Day),
            (
                draft.State,
                draft.ClientId,
                draft.UnitKindId,
                draft.RepeatsId,
                draft.OrderNote,
                draft.PriceMinor,
                draft.Currency,
                draft.Dates.SpecifiedOn
            )
        );
        Assert.Null(HairSystem.DraftRepeatOrder(Guid.CreateVersion7(), "U-3", draft, Day, " ").OrderNote);
    }

    [Theory]
    [InlineData(UnitState.Retired)]
    [InlineData(UnitState.Lost)]
    [InlineData(UnitState.Damaged)]
    [InlineData(UnitState.ReturnedToClient)]
    [InlineData(UnitState.EmergencySpare)]
    public void It_leaves_service_with_a_day_and_a_reason(UnitState end)
    {
        var unit = In(UnitState.Resting);

        unit.LeaveService(end, Day, "Worn out");

        Assert.Equal((end, (LocalDate?)Day, "Worn out"), (unit.State, unit.Dates.RetiredOn, unit.RetiredBecause));
    }

    [Fact]
    public void It_does_not_leave_service_from_a_head_nor_into_any_other_state()
    {
        Assert.Equal(
            "Unit U-1 is on a head: log its take-down first.",
            Assert.Throws<Refusal>(() => In(UnitState.Bonded).LeaveService(UnitState.Lost, Day, "x")).Message
        );
        foreach (var state in Enum.GetValues<UnitState>().Where(s => !s.IsGone() && s != UnitState.EmergencySpare))
            Refused.Saying(
                "A unit leaves service as retired, lost, damaged, returned or as an emergency spare.",
                () => In(UnitState.Resting).LeaveService(state, Day, "x")
            );
    }

    [Fact]
    public void It_is_mended_once_it_is_here_and_not_before_that_day_nor_after_its_end()
    {
        foreach (var state in Enum.GetValues<UnitState>())
        {
            var unit = In(state);
            if (state is UnitState.Specified or UnitState.Away || state.IsInFlight() || state.IsGone())
                Assert.EndsWith(
                    "this cannot be done now. Open the unit to see what comes next.",
                    RefusalOf(() => Mend(unit, Day)),
                    StringComparison.Ordinal
                );
            else
                Mend(unit, Day);
        }
        var here = In(UnitState.Arrived);
        here.ImportState(UnitState.Arrived, new UnitDates { ArrivedOn = Day }, null);
        Assert.StartsWith("Unit U-1 was not here yet", RefusalOf(() => Mend(here, Day.PlusDays(-1))), StringComparison.Ordinal);
        Mend(here, Day);
        Assert.Single(here.Repairs);

        // An old book may know only when it was worn first.
        here.ImportState(UnitState.Resting, new UnitDates { FirstBondedOn = Day }, null);
        Assert.StartsWith("Unit U-1 was not here yet", RefusalOf(() => Mend(here, Day.PlusDays(-1))), StringComparison.Ordinal);
    }

    [Fact]
    public void An_old_book_that_puts_two_steps_in_the_wrong_order_is_refused_by_their_names()
    {
        var unit = In(UnitState.Specified);

        Assert.Equal(
            "Unit U-1 was arrived before it was shipped.",
            RefusalOf(() => unit.ImportState(UnitState.Arrived, new UnitDates { ShippedOn = Day, ArrivedOn = Day.PlusDays(-1) }, null))
        );
        Assert.Equal(
            "Unit U-1 was retired before it was ordered.",
            RefusalOf(() => unit.ImportState(UnitState.Retired, new UnitDates { OrderedOn = Day, RetiredOn = Day.PlusDays(-1) }, null))
        );
        unit.ImportState(UnitState.Arrived, new UnitDates { ShippedOn = Day, ArrivedOn = Day }, null, remadeTimes: null);
        Assert.Null(unit.RemadeTimes);
    }

    private static void Mend(HairSystem unit, LocalDate on) => unit.AddRepair(Guid.CreateVersion7(), on, RepairKind.Rim, "note");

    private static string RefusalOf(Action action) => Assert.Throws<Refusal>(action).Message;

    private static HairSystem In(UnitState state)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", null, Guid.CreateVersion7(), null);
        unit.ImportState(state, new UnitDates(), retiredBecause: null, remadeTimes: 0);
        return unit;
    }
}
