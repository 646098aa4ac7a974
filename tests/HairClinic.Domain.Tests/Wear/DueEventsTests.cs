using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>
/// Bonded on Tuesday 3 March 2026; window 31 March to 28 April, target 4 April, hold as the window alone expects it. Chances and days that are
/// called a worked example were worked out from the window's prior outside the program.
/// </summary>
public sealed class DueEventsTests
{
    private static readonly LocalDate AppliedOn = new(2026, 3, 3);
    private static readonly HoldPrior Prior = new(FourToEightWeeks);

    private static DueRuleInput Ask(params LifeEventDays[] events) =>
        new(AppliedOn, FourToEightWeeks, 32, OpenDaily("Europe/London")) { Events = [.. events], Survival = days => Prior.Survival(days) };

    private static DueWindow DueWith(params LifeEventDays[] events) => DueRule.DueWindowFor(Ask(events));

    private static LocalDate Day(int days) => AppliedOn.PlusDays(days);

    // Worked example: S(27) = 0.917, and a wedding wants 0.990.
    [Fact]
    public void A_wedding_before_the_window_that_the_bond_may_not_last_to_pulls_the_rebond_five_days_ahead_of_it()
    {
        var due = DueWith(LifeEventDays.SingleDay(Day(27)));

        Assert.Equal((Day(22), Day(22)), (due.DueOn, due.Opens));
        Assert.True(due.Why.Has(DueRuleName.OpensEarlyAtTarget));
        Assert.Contains(new DueReason(DueRuleName.EventBeyondHold, Day(27), Day(27), 917, 990), due.Why.Explain());
        Assert.Contains(new DueReason(DueRuleName.PulledAheadOfEvent, Day(32), Day(22), 5), due.Why.Explain());
        Assert.False(due.Why.Has(DueRuleName.FreshBondFallsShort));
    }

    // Worked example: S(40) = 0.546, and a journey wants 0.900.
    [Fact]
    public void Three_weeks_away_are_judged_by_their_last_day()
    {
        var due = DueWith(LifeEventDays.Away(Day(20), Day(40)));

        Assert.Equal(Day(15), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.EventBeyondHold, Day(20), Day(40), 546, 900), due.Why.Explain());
        Assert.False(due.Why.Has(DueRuleName.MovedOutOfAbsence));
    }

    [Theory]
    [InlineData(0.989, true)]
    [InlineData(0.98949, true)]
    [InlineData(0.9895, false)]
    [InlineData(0.99, false)]
    public void The_chance_is_rounded_to_three_places_before_it_is_compared(double chance, bool pulls)
    {
        var due = DueRule.DueWindowFor(Ask(LifeEventDays.SingleDay(Day(27))) with { Survival = _ => chance });

        Assert.Equal(pulls ? Day(22) : Day(32), due.DueOn);
    }

    [Theory]
    [InlineData(99, 22)]
    [InlineData(91, 32)]
    [InlineData(92, 22)]
    public void How_sound_a_bond_must_be_is_the_events_own(int percent, int days) =>
        Assert.Equal(Day(days), DueWith(LifeEventDays.ToBeReadyFor(Day(27), Day(27), percent)).DueOn);

    [Theory]
    [InlineData(15)] // the bond is as good as certain to last so long
    [InlineData(37)] // the target is early enough as it is
    [InlineData(-330)] // long past
    [InlineData(0)] // on the day of the bond
    [InlineData(90)] // the next bond's
    public void Other_weddings_leave_the_rebond_where_it_is(int days)
    {
        var due = DueWith(LifeEventDays.SingleDay(Day(days)));

        Assert.Equal(Day(32), due.DueOn);
        Assert.False(due.Why.Has(DueRuleName.PulledAheadOfEvent));
    }

    [Fact]
    public void How_far_ahead_is_the_event_s_own()
    {
        Assert.Equal(Day(20), DueWith(LifeEventDays.SingleDay(Day(27), 7)).DueOn);
    }

    [Fact]
    public void Of_several_events_the_one_that_asks_for_the_earliest_day_decides()
    {
        var wedding = LifeEventDays.SingleDay(Day(35), 5);
        var journey = LifeEventDays.Away(Day(36), Day(50), 10);

        Assert.Equal(Day(26), DueWith(wedding, journey).DueOn);
        Assert.Equal(DueWith(wedding, journey).DueOn, DueWith(journey, wedding).DueOn);
    }

    [Fact]
    public void A_pulled_rebond_on_a_closed_day_moves_earlier_never_nearer_the_event()
    {
        // Five days ahead of Saturday 11 April is Monday 6 April, closed; Tuesday would be too late.
        var question = Ask(LifeEventDays.SingleDay(new(2026, 4, 11))) with
        {
            Opening = OpenTuesdayToSaturday(),
            TargetDays = 40,
        };

        Assert.Equal(new LocalDate(2026, 4, 4), DueRule.DueWindowFor(question).DueOn);
    }

    [Fact]
    public void A_rebond_that_is_early_enough_moves_no_nearer_the_event_either()
    {
        // The target itself, Saturday 4 April, is the last day early enough; it and the days before it are closed.
        var question = Ask(LifeEventDays.SingleDay(Day(37))) with
        {
            Opening = OpenDaily("Europe/London", Closed(new(2026, 4, 2), new(2026, 4, 4))),
        };
        var due = DueRule.DueWindowFor(question);

        Assert.Equal(new LocalDate(2026, 4, 1), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.KeptAheadOfEvent, Day(32), Day(32), 5), due.Why.Explain());
    }

    [Fact]
    public void Where_a_fresh_bond_too_may_not_last_the_reason_says_so()
    {
        // From day 15 to day 60 are 45 days: the fresh bond has S(45) = 0.360.
        var due = DueWith(LifeEventDays.Away(Day(20), Day(60)));

        Assert.Equal(Day(15), due.DueOn);
        var fresh = due.Why.Explain().Single(reason => reason.Rule == DueRuleName.FreshBondFallsShort);
        Assert.Equal((Day(15), Day(60), 900), (fresh.From, fresh.To, fresh.UpTo));
        Assert.Equal((int)Math.Round(1000 * Prior.Survival(45)), fresh.Amount);
    }

    [Fact]
    public void A_bond_made_days_before_a_long_event_is_itself_the_fresh_one_and_due_on_the_first_day_after()
    {
        // Five days ahead of day 6 is inside the cure, on day 4 before the bond: too late either way.
        foreach (var begins in new[] { 6, 4 })
        {
            var due = DueWith(LifeEventDays.Away(Day(begins), Day(40)));

            Assert.Equal(Day(41), due.DueOn);
            Assert.Contains(new DueReason(DueRuleName.MovedAfterEvent, Day(32), Day(41), 5), due.Why.Explain());
        }
        Assert.Equal(Day(2), DueWith(LifeEventDays.Away(Day(7), Day(40))).DueOn);
    }

    [Fact]
    public void A_bond_made_while_the_event_runs_is_due_after_it()
    {
        var due = DueRule.DueWindowFor(
            Ask(LifeEventDays.Away(Day(-3), Day(38))) with
            {
                Opening = OpenDaily("Europe/London", Closed(Day(39), Day(40))),
            }
        );

        // Closed on the first days after it: later, not back into it.
        Assert.Equal(Day(41), due.DueOn);
        Assert.Equal((Day(28), Day(39)), (due.Opens, due.Target));
    }

    [Fact]
    public void An_event_that_runs_beyond_the_window_and_cannot_be_got_ahead_of_is_left_to_a_person()
    {
        var due = DueWith(LifeEventDays.Away(Day(4), Day(70)));

        Assert.Equal(due.Closes, due.DueOn);
        Assert.True(due.Why.Has(DueRuleName.NoOpenDay));
    }

    [Fact]
    public void Nothing_falls_due_while_the_client_is_away()
    {
        // So sure to hold that nothing is pulled: the first day back is nearer than any day before leaving.
        var due = DueRule.DueWindowFor(Ask(LifeEventDays.Away(Day(17), Day(34))) with { Survival = _ => 0.95 });

        Assert.Equal(Day(35), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.MovedOutOfAbsence, Day(17), Day(34)), due.Why.Explain());
    }

    [Fact]
    public void A_client_away_for_the_whole_window_comes_before_leaving()
    {
        var due = DueRule.DueWindowFor(Ask(LifeEventDays.Away(Day(17), Day(78))) with { Survival = _ => 0.95 });

        Assert.Equal(Day(16), due.DueOn);
        Assert.True(due.Why.Has(DueRuleName.MovedBeforeWindow));
        Assert.True(due.Why.Has(DueRuleName.MovedOutOfAbsence));
    }

    [Fact]
    public void An_event_ends_on_or_after_the_day_it_begins() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LifeEventDays.Away(new(2026, 4, 3), new(2026, 4, 2)));

    [Fact]
    public void An_event_cannot_be_judged_without_knowing_how_bonds_hold() =>
        Assert.Throws<ArgumentException>(() => DueRule.DueWindowFor(Ask(LifeEventDays.SingleDay(Day(27))) with { Survival = null }));
}
