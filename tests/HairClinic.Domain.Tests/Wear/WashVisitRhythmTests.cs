using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Bonded on Tuesday 3 March 2026, rebond due on Saturday 4 April.</summary>
public sealed class WashVisitRhythmTests
{
    private static readonly LocalDate AppliedOn = new(2026, 3, 3);
    private static readonly LocalDate RebondDueOn = new(2026, 4, 4);

    private static WashVisitDay Next(WashVisitRhythm rhythm, LocalDate? lastWashOn, OpeningDays? opening = null) =>
        rhythm.Next(lastWashOn, AppliedOn, default, RebondDueOn, opening ?? OpenDaily("Europe/London"));

    [Fact]
    public void The_first_wash_counts_from_the_bond_and_the_next_from_the_last_wash()
    {
        Assert.Equal(new WashVisitDay(new(2026, 3, 10), false), Next(WashVisitRhythm.Weekly, null));
        Assert.Equal(new WashVisitDay(new(2026, 3, 17), false), Next(WashVisitRhythm.Fortnightly, null));
        Assert.Equal(new WashVisitDay(new(2026, 3, 19), false), Next(WashVisitRhythm.Weekly, new(2026, 3, 12)));
    }

    [Fact]
    public void A_wash_before_the_bond_was_made_no_longer_counts() =>
        Assert.Equal(new WashVisitDay(new(2026, 3, 10), false), Next(WashVisitRhythm.Weekly, new(2026, 2, 28)));

    [Theory]
    [InlineData(24, 31, false)]
    [InlineData(25, 1, true)]
    [InlineData(27, 3, true)]
    [InlineData(30, 6, true)]
    public void A_wash_within_three_days_of_the_rebond_is_one_trip(int lastMarchDay, int wantedDay, bool oneTrip)
    {
        var next = Next(WashVisitRhythm.Weekly, new(2026, 3, lastMarchDay));

        Assert.Equal(oneTrip, next.WithRebond);
        Assert.Equal(oneTrip ? RebondDueOn : new LocalDate(2026, 3, wantedDay), next.On);
    }

    [Fact]
    public void A_wash_that_would_follow_the_rebond_is_done_at_it() =>
        Assert.Equal(new WashVisitDay(RebondDueOn, true), Next(WashVisitRhythm.Fortnightly, new(2026, 3, 30)));

    [Fact]
    public void No_wash_falls_inside_the_cure()
    {
        var next = new WashVisitRhythm(1).Next(null, AppliedOn, new(48), RebondDueOn, OpenDaily("Europe/London"));

        Assert.Equal(new LocalDate(2026, 3, 6), next.On);
    }

    [Fact]
    public void A_wash_on_a_closed_day_moves_to_the_nearest_open_one_but_never_into_the_cure()
    {
        // Three days on is Friday 6 March; with Friday to Sunday closed, Thursday 5 is nearest and still clear of 24 h.
        var closed = OpenDaily("Europe/London", Closed(new(2026, 3, 6), new(2026, 3, 8)));
        Assert.Equal(new LocalDate(2026, 3, 5), new WashVisitRhythm(3).Next(null, AppliedOn, new(24), RebondDueOn, closed).On);
        Assert.Equal(new LocalDate(2026, 3, 9), new WashVisitRhythm(3).Next(null, AppliedOn, new(48), RebondDueOn, closed).On);
    }

    [Fact]
    public void A_rhythm_has_a_day_at_least_and_eight_weeks_at_most()
    {
        Assert.Equal(56, new WashVisitRhythm(56).Days);
        Assert.Throws<ArgumentOutOfRangeException>(() => new WashVisitRhythm(57));
        Assert.Throws<ArgumentOutOfRangeException>(() => new WashVisitRhythm(0));
        Assert.Equal("A wash rhythm has a number of days.", Assert.Throws<InvalidOperationException>(() => Next(default, null)).Message);
    }

    [Fact]
    public void The_look_over_comes_a_week_after_the_first_fitting_or_on_the_nearest_open_day()
    {
        Assert.Equal(new LocalDate(2026, 3, 10), FirstFittingFollowUpRule.DueOn(AppliedOn, OpenTuesdayToSaturday()));
        Assert.Equal(
            new LocalDate(2026, 3, 11),
            FirstFittingFollowUpRule.DueOn(AppliedOn, OpenTuesdayToSaturday(Closed(new(2026, 3, 10), new(2026, 3, 10))))
        );
        Assert.Equal(
            new LocalDate(2026, 3, 10),
            FirstFittingFollowUpRule.DueOn(AppliedOn, OpenTuesdayToSaturday(Closed(new(2026, 3, 1), new(2026, 3, 31))))
        );
    }

    [Fact]
    public void A_wash_that_a_closure_moves_close_to_the_rebond_is_one_trip_with_it()
    {
        // Wanted on Tuesday 31 March; shut on it and the day before it, and Wednesday 1 April is three days before the rebond.
        var opening = OpenDaily("Europe/London", Closed(new(2026, 3, 30), new(2026, 3, 31)));

        Assert.Equal(new WashVisitDay(RebondDueOn, true), Next(WashVisitRhythm.Weekly, new(2026, 3, 24), opening));
    }
}
