using HairClinic.Domain.Chairs;
using HairClinic.Domain.Tests.Reference;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

/// <summary>Against the published transitions of tz_transitions.csv (IANA tz database).</summary>
public sealed class OpeningHoursTests
{
    private static OpeningHours Daily(string zone, string opens, string closes) =>
        new(
            Enumerable.Range(1, 7).Select(day => new WeekdayTimeRange((IsoDayOfWeek)day, Time(opens), Time(closes))),
            [],
            DateTimeZoneProviders.Tzdb[zone]
        );

    private static LocalTime Time(string text) => NodaTime.Text.LocalTimePattern.ExtendedIso.Parse(text).Value;

    [Fact]
    public void A_day_with_a_break_has_two_stretches()
    {
        var tuesday = new[]
        {
            new WeekdayTimeRange(IsoDayOfWeek.Tuesday, new(14, 0), new(18, 30)),
            new WeekdayTimeRange(IsoDayOfWeek.Tuesday, new(9, 0), new(13, 0)),
        };
        var hours = new OpeningHours(tuesday, [new(new(2026, 3, 10), new(2026, 3, 10))], DateTimeZoneProviders.Tzdb["America/New_York"]);

        Assert.Equal(
            [
                new(Instant.FromUtc(2026, 3, 3, 14, 0), Instant.FromUtc(2026, 3, 3, 18, 0)),
                new(Instant.FromUtc(2026, 3, 3, 19, 0), Instant.FromUtc(2026, 3, 3, 23, 30)),
            ],
            hours.On(new(2026, 3, 3))
        );
        Assert.Empty(hours.On(new(2026, 3, 4)));
        Assert.Empty(hours.On(new(2026, 3, 10)));
        Assert.True(hours.Days.IsOpen(new(2026, 3, 3)));
        Assert.False(hours.Days.IsOpen(new(2026, 3, 4)));
        Assert.False(hours.Days.IsOpen(new(2026, 3, 10)));
    }

    [Theory]
    [InlineData("America/Sao_Paulo", "00:00:00", 60)] // the day itself begins at 01:00
    [InlineData("Europe/London", "01:30:00", 60)]
    [InlineData("America/New_York", "02:15:00", 60)]
    [InlineData("Australia/Lord_Howe", "02:10:00", 30)]
    public void A_salon_that_would_open_inside_a_gap_opens_at_its_end(string zone, string opens, int shift)
    {
        var change = ZoneTransition.Of(zone, "gap");
        Assert.Equal(shift, change.ShiftMinutes);

        var day = Daily(zone, opens, "12:00:00").On(change.LocalAfter.Date).Single();

        Assert.Equal(change.At, day.Start);
        Assert.Equal(change.LocalAfter.Date.At(new(12, 0)), day.End.InZone(change.DateTimeZone).LocalDateTime);
    }

    [Fact]
    public void A_stretch_wholly_inside_a_gap_does_not_happen()
    {
        var change = ZoneTransition.Of("Europe/London", "gap");

        Assert.Empty(Daily("Europe/London", "01:10:00", "01:50:00").On(change.LocalAfter.Date));
    }

    [Fact]
    public void Where_the_clocks_repeat_the_salon_opens_at_the_first_and_closes_at_the_second_occurrence()
    {
        var change = ZoneTransition.Of("Australia/Lord_Howe", "overlap");
        var hours = Daily(change.Zone, "01:40:00", "01:50:00");

        var night = hours.On(change.LocalAfter.Date).Single();

        Assert.Equal(change.At - Duration.FromMinutes(20), night.Start);
        Assert.Equal(change.At + Duration.FromMinutes(20), night.End);
    }

    [Fact]
    public void A_day_the_zone_skipped_has_no_hours_and_its_neighbours_have_theirs()
    {
        var change = ZoneTransition.All.Single(row => row.ShiftMinutes == 1440);
        var (day, allDay) = (Daily(change.Zone, "09:00:00", "18:00:00"), Daily(change.Zone, "00:00:00", "00:00:00"));
        var skipped = change.LocalBefore.Date;

        Assert.Empty(day.On(skipped));
        Assert.Empty(allDay.On(skipped));
        Assert.Equal(Duration.FromHours(9), day.On(skipped.PlusDays(-1)).Single().Duration);
        Assert.Equal(change.At, allDay.On(skipped.PlusDays(-1)).Single().End);
        Assert.Equal(change.At, allDay.On(skipped.PlusDays(1)).Single().Start);
    }

    [Fact]
    public void Closing_at_midnight_means_the_end_of_the_day_however_long_the_night()
    {
        var spring = ZoneTransition.Of("America/Sao_Paulo", "gap");
        var autumn = ZoneTransition.Of("America/Sao_Paulo", "overlap");
        var hours = Daily("America/Sao_Paulo", "12:00:00", "00:00:00");

        Assert.Equal(spring.At, hours.On(spring.LocalBefore.Date.PlusDays(-1)).Single().End);
        Assert.Equal(Duration.FromHours(13), hours.On(autumn.LocalAfter.Date).Single().Duration);
    }

    [Fact]
    public void Asking_between_two_instants_gives_the_whole_stretches_that_touch_them()
    {
        var hours = Daily("Europe/London", "09:00:00", "17:00:00");

        var stretches = hours.Between(Instant.FromUtc(2026, 3, 28, 12, 0), Instant.FromUtc(2026, 3, 30, 8, 0));

        // On the 29th the clocks go forward: 09:00 is an hour earlier in UTC. The 30th opens at 08:00 UTC, too late.
        Assert.Equal(
            [
                new(Instant.FromUtc(2026, 3, 28, 9, 0), Instant.FromUtc(2026, 3, 28, 17, 0)),
                new(Instant.FromUtc(2026, 3, 29, 8, 0), Instant.FromUtc(2026, 3, 29, 16, 0)),
            ],
            stretches
        );
    }

    [Fact]
    public void Hours_that_close_before_they_open_are_refused() =>
        Assert.Throws<ArgumentException>(() => new WeekdayTimeRange(IsoDayOfWeek.Monday, new(18, 0), new(9, 0)));
}
