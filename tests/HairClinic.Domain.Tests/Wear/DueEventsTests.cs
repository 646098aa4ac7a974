using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Bonded on Tuesday 3 March 2026; window 31 March to 28 April, target 4 April.</summary>
public sealed class DueEventsTests
{
    private static DueWindow DueWith(params LifeEventDays[] events) =>
        DueRule.DueWindowFor(new(new(2026, 3, 3), FourToEightWeeks, 32, OpenDaily("Europe/London")) { Events = [.. events] });

    [Fact]
    public void A_wedding_just_after_the_target_pulls_the_rebond_five_days_ahead_of_it()
    {
        var due = DueWith(LifeEventDays.SingleDay(new(2026, 4, 6)));

        Assert.Equal(new LocalDate(2026, 4, 1), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.PulledAheadOfEvent, new(2026, 4, 4), new(2026, 4, 1), 5), due.Why.Explain());
        Assert.False(due.Why.Has(DueRuleName.OpensEarlyAtTarget));
    }

    [Fact]
    public void A_wedding_on_the_day_the_window_opens_opens_it_early()
    {
        var due = DueWith(LifeEventDays.SingleDay(new(2026, 3, 31)));

        Assert.Equal(new LocalDate(2026, 3, 26), due.Opens);
        Assert.Equal(new LocalDate(2026, 3, 26), due.DueOn);
        Assert.True(due.Why.Has(DueRuleName.OpensEarlyAtTarget));
    }

    [Theory]
    [InlineData(2026, 3, 30)] // the bond is still young
    [InlineData(2026, 4, 9)] // the target is early enough as it is
    [InlineData(2025, 4, 6)] // long past
    public void Other_weddings_leave_the_rebond_where_it_is(int year, int month, int day)
    {
        var due = DueWith(LifeEventDays.SingleDay(new(year, month, day)));

        Assert.Equal(new LocalDate(2026, 4, 4), due.DueOn);
        Assert.False(due.Why.Has(DueRuleName.PulledAheadOfEvent));
    }

    [Fact]
    public void How_far_ahead_is_the_event_s_own()
    {
        Assert.Equal(new LocalDate(2026, 3, 30), DueWith(LifeEventDays.SingleDay(new(2026, 4, 6), 7)).DueOn);
    }

    [Fact]
    public void Of_several_events_the_one_that_asks_for_the_earliest_day_decides()
    {
        var wedding = LifeEventDays.SingleDay(new(2026, 4, 7), 5);
        var surgery = LifeEventDays.SingleDay(new(2026, 4, 8), 10);

        Assert.Equal(new LocalDate(2026, 3, 29), DueWith(wedding, surgery).DueOn);
        Assert.Equal(DueWith(wedding, surgery).DueOn, DueWith(surgery, wedding).DueOn);
    }

    [Fact]
    public void A_pulled_rebond_on_a_closed_day_moves_earlier_never_nearer_the_event()
    {
        var question = new DueRuleInput(new(2026, 3, 3), FourToEightWeeks, 32, OpenTuesdayToSaturday())
        {
            // Five days ahead of Saturday 11 April is Monday 6 April, closed; Tuesday would be too late.
            Events = [LifeEventDays.SingleDay(new(2026, 4, 11))],
            TargetDays = 40,
        };

        Assert.Equal(new LocalDate(2026, 4, 4), DueRule.DueWindowFor(question).DueOn);
    }

    [Fact]
    public void Nothing_falls_due_while_the_client_is_away()
    {
        // Away since before the window opened: the first day back is nearer than any day before leaving.
        var due = DueWith(LifeEventDays.Away(new(2026, 3, 20), new(2026, 4, 6)));

        Assert.Equal(new LocalDate(2026, 4, 7), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.MovedOutOfAbsence, new(2026, 3, 20), new(2026, 4, 6)), due.Why.Explain());
    }

    [Fact]
    public void A_client_away_for_the_whole_window_comes_before_leaving()
    {
        var due = DueWith(LifeEventDays.Away(new(2026, 3, 20), new(2026, 5, 20)));

        Assert.Equal(new LocalDate(2026, 3, 19), due.DueOn);
        Assert.True(due.Why.Has(DueRuleName.MovedBeforeWindow));
        Assert.True(due.Why.Has(DueRuleName.MovedOutOfAbsence));
    }

    [Fact]
    public void A_journey_that_begins_inside_the_window_is_one_to_be_ready_for()
    {
        var due = DueWith(LifeEventDays.Away(new(2026, 4, 3), new(2026, 4, 20)));

        Assert.Equal(new LocalDate(2026, 3, 29), due.DueOn);
        Assert.True(due.Why.Has(DueRuleName.PulledAheadOfEvent));
        Assert.False(due.Why.Has(DueRuleName.MovedOutOfAbsence));
    }

    [Fact]
    public void A_bond_made_days_before_the_event_is_itself_the_fresh_one()
    {
        var question = new DueRuleInput(new(2026, 3, 3), new(1, 3), 10, OpenDaily("Europe/London"))
        {
            Events = [LifeEventDays.SingleDay(new(2026, 3, 10), 6)],
        };

        Assert.Equal(new LocalDate(2026, 3, 13), DueRule.DueWindowFor(question).DueOn);
    }

    [Fact]
    public void An_event_ends_on_or_after_the_day_it_begins() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LifeEventDays.Away(new(2026, 4, 3), new(2026, 4, 2)));
}
