using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Operations, scans and treatments. Bonded on Tuesday 3 March 2026; window 31 March to 28 April, target 4 April. Common practice, no source.</summary>
public sealed class DueTakeDownTests
{
    private static readonly LocalDate AppliedOn = new(2026, 3, 3);
    private static readonly HoldPrior Prior = new(FourToEightWeeks);

    private static DueRuleInput Ask(params LifeEventDays[] events) =>
        new(AppliedOn, FourToEightWeeks, 32, OpenDaily("Europe/London")) { Events = [.. events], Survival = days => Prior.Survival(days) };

    private static DueWindow DueWith(params LifeEventDays[] events) => DueRule.DueWindowFor(Ask(events));

    private static LocalDate Day(int days) => AppliedOn.PlusDays(days);

    private static LifeEventDays Operation(int days, int length = 0) => LifeEventDays.OffBefore(Day(days), Day(days + length));

    [Theory]
    [InlineData(27)] // before the window
    [InlineData(33)] // the day after the target
    [InlineData(36)] // a rebond on day 32 would be four days old
    public void A_take_down_is_due_the_day_before_and_no_rebond(int days)
    {
        var due = DueWith(Operation(days));

        Assert.True(due.IsTakeDown);
        Assert.Equal(Day(days - 1), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.TakeDownBeforeEvent, Day(32), Day(days - 1)), due.Why.Explain());
        Assert.True(due.Opens <= due.DueOn);
        Assert.True(due.Why.Explain().AskForTakeDown());
    }

    [Fact]
    public void A_rebond_that_is_due_early_enough_is_made_and_the_take_down_is_the_next_bonds()
    {
        var due = DueWith(Operation(37));

        Assert.False(due.IsTakeDown);
        Assert.Equal(Day(32), due.DueOn);
        Assert.False(due.Why.Explain().AskForTakeDown());
    }

    [Fact]
    public void On_closed_days_before_it_the_last_open_day_is_taken()
    {
        // Tuesday 31 March: closed on Sunday and Monday, and that Saturday and Friday too.
        var question = Ask(Operation(28)) with
        {
            Opening = OpenTuesdayToSaturday(Closed(new(2026, 3, 27), new(2026, 3, 28))),
        };

        Assert.Equal(new LocalDate(2026, 3, 26), DueRule.DueWindowFor(question).DueOn);
    }

    [Fact]
    public void While_away_nobody_comes_for_a_take_down_either()
    {
        var due = DueWith(Operation(27), LifeEventDays.ToBeReadyFor(Day(22), Day(26), 50, away: true));

        Assert.Equal(Day(21), due.DueOn);
        Assert.True(due.Why.Has(DueRuleName.MovedOutOfAbsence));
    }

    [Fact]
    public void A_unit_that_has_to_be_off_comes_off_cured_or_not()
    {
        Assert.Equal(Day(1), DueWith(Operation(2)).DueOn);
    }

    [Theory]
    [InlineData(1, 0)] // tomorrow
    [InlineData(0, 30)] // begins today
    [InlineData(-10, 30)] // runs
    public void Where_it_is_too_late_the_first_day_after_the_bond_is_due(int days, int length)
    {
        var due = DueRule.DueWindowFor(Ask(Operation(days, length)) with { Opening = OpenDaily("Europe/London", Closed(Day(1), Day(2))) });

        Assert.True(due.IsTakeDown);
        Assert.Equal(Day(3), due.DueOn);
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(-1, 1)]
    public void One_that_is_over_when_the_bond_is_made_asks_nothing(int days, int length) =>
        Assert.Equal(Day(32), DueWith(Operation(days, length)).DueOn);

    [Fact]
    public void It_goes_before_a_wedding_and_the_earliest_of_several_decides()
    {
        var due = DueWith(LifeEventDays.SingleDay(Day(27)), Operation(30), Operation(25, 20));

        Assert.True(due.IsTakeDown);
        Assert.Equal(Day(24), due.DueOn);
        Assert.False(due.Why.Has(DueRuleName.PulledAheadOfEvent));
    }

    // The rebond on day 32 would be early enough for the first and too late for the second; taken down, nothing is bonded between them.
    [Fact]
    public void What_comes_off_for_one_is_off_before_an_earlier_one_that_a_rebond_would_have_been_early_enough_for()
    {
        var due = DueWith(
            LifeEventDays.OffBefore(Day(33), Day(34), daysAhead: 0),
            LifeEventDays.OffBefore(Day(35), Day(50), daysAhead: 20)
        );

        Assert.True(due.IsTakeDown);
        Assert.Equal(Day(32), due.DueOn);
    }

    [Fact]
    public void With_no_open_day_before_it_a_person_chooses()
    {
        var question = Ask(Operation(27)) with { Opening = OpenDaily("Europe/London", Closed(AppliedOn, Day(60))) };
        var due = DueRule.DueWindowFor(question);

        Assert.True(due.IsTakeDown && due.Why.Has(DueRuleName.NoOpenDay));
        Assert.Equal(Day(26), due.DueOn);
    }

    [Fact]
    public void It_is_due_before_the_window_closes_whenever_the_event_is()
    {
        var question = Ask(Operation(58)) with { TargetDays = 56 };
        var due = DueRule.DueWindowFor(question);

        Assert.True(due.IsTakeDown);
        Assert.Equal(due.Closes, due.DueOn);
    }
}
