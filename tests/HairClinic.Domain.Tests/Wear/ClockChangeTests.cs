using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Against the published transitions of tz_transitions.csv (IANA tz database).</summary>
public sealed class ClockChangeTests
{
    [Theory]
    [InlineData("America/New_York", "gap", 60)]
    [InlineData("America/New_York", "overlap", -60)]
    [InlineData("Europe/London", "gap", 60)]
    [InlineData("Europe/London", "overlap", -60)]
    [InlineData("Australia/Lord_Howe", "gap", 30)]
    [InlineData("Australia/Lord_Howe", "overlap", -30)]
    public void A_night_with_a_clock_change_moves_the_wall_time_of_the_cure_s_end_not_its_length(string zone, string kind, int minutes)
    {
        var change = ZoneTransition.Of(zone, kind);
        Assert.Equal(minutes, change.ShiftMinutes);
        // Bonded at four in the afternoon before the change.
        var bonded = change.LocalBefore.Date.PlusDays(-1).At(new LocalTime(16, 0));
        var appliedAt = bonded.InZoneStrictly(change.DateTimeZone).ToInstant();

        var ends = new Cure(24).EndsAt(appliedAt);

        Assert.Equal(Duration.FromHours(24), ends - appliedAt);
        Assert.Equal(bonded.PlusDays(1).PlusMinutes(minutes), ends.InZone(change.DateTimeZone).LocalDateTime);
        Assert.Equal(BondState.Curing, StateAt(ends - Duration.FromSeconds(1)));
        Assert.Equal(BondState.Held, StateAt(ends));

        BondState StateAt(Instant now) =>
            new BondDates(bonded.Date.PlusWeeks(4), bonded.Date.PlusWeeks(8)) { AppliedAt = appliedAt }.StateOn(
                now.InZone(change.DateTimeZone).Date,
                now
            );
    }

    [Fact]
    public void Weeks_across_a_clock_change_keep_the_weekday()
    {
        foreach (var change in ZoneTransition.All.Where(change => Math.Abs(change.ShiftMinutes) <= 60))
        {
            var appliedOn = change.LocalBefore.Date.PlusDays(-3);
            var due = DueRule.DueWindowFor(new(appliedOn, new(4, 8), 35, Salons.OpenDaily(change.Zone)));

            Assert.Equal(appliedOn.PlusDays(28), due.Opens);
            Assert.Equal(appliedOn.PlusDays(56), due.Closes);
            Assert.Equal(appliedOn.PlusDays(35), due.DueOn);
            Assert.Equal(appliedOn.DayOfWeek, due.DueOn.DayOfWeek);
        }
    }

    [Fact]
    public void A_due_day_that_the_zone_skipped_moves_to_the_nearest_day_that_exists()
    {
        // 30 December 2011 did not exist in Apia: 28 days after 2 December, exactly where the window opens.
        var due = DueRule.DueWindowFor(new(new(2011, 12, 2), new(4, 8), 28, Salons.OpenDaily("Pacific/Apia")));

        Assert.Equal(new LocalDate(2011, 12, 30), due.Target);
        Assert.Equal(new LocalDate(2011, 12, 31), due.DueOn);
        Assert.True(due.Why.Has(DueRuleName.MovedToOpenDay));
    }

    [Fact]
    public void A_skipped_day_does_not_count_towards_the_cure()
    {
        var cure = new Cure(24);
        var eve = new LocalDate(2011, 12, 29);

        Assert.Equal(new LocalDate(2012, 1, 1), cure.FirstClearDay(eve, Salons.OpenDaily("Pacific/Apia")));
        Assert.Equal(new LocalDate(2011, 12, 31), cure.FirstClearDay(eve, Salons.OpenDaily("Europe/London")));
    }
}
