using HairClinic.Web.Features.Visits;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits.Day;

/// <summary>Days on which the clocks change. Transitions are the IANA database's; Lord Howe shifts by half an hour.</summary>
public sealed class DayMinuteConverterTests
{
    [Theory]
    [InlineData("Europe/London", "2027-10-31", 25 * 60)]
    [InlineData("Europe/London", "2027-03-28", 23 * 60)]
    [InlineData("Europe/London", "2027-02-04", 24 * 60)]
    [InlineData("America/New_York", "2027-11-07", 25 * 60)]
    [InlineData("America/New_York", "2027-03-14", 23 * 60)]
    [InlineData("Australia/Lord_Howe", "2027-04-04", (24 * 60) + 30)]
    public void A_day_has_the_minutes_that_pass_in_it(string zone, string day, int minutes) =>
        Assert.Equal(minutes, Clock(zone, day).Length);

    [Fact]
    public void The_repeated_hour_is_two_places_on_the_line_with_the_same_words()
    {
        var clock = Clock("Europe/London", "2027-10-31");
        var (first, second) = (Instant.FromUtc(2027, 10, 31, 0, 30), Instant.FromUtc(2027, 10, 31, 1, 30));

        Assert.Equal((90, 150), (clock.ToMinute(first), clock.ToMinute(second)));
        Assert.Equal((new LocalTime(1, 30), new LocalTime(1, 30)), (clock.WallAt(90), clock.WallAt(150)));
    }

    [Fact]
    public void Nine_o_clock_is_called_nine_o_clock_on_the_long_day_too()
    {
        var clock = Clock("America/New_York", "2027-11-07");
        var nine = new LocalDateTime(2027, 11, 7, 9, 0).InZoneStrictly(DateTimeZoneProviders.Tzdb["America/New_York"]).ToInstant();

        Assert.Equal(10 * 60, clock.ToMinute(nine));
        Assert.Equal(new LocalTime(9, 0), clock.WallAt(10 * 60));
        Assert.Equal(nine, clock.InstantAt(10 * 60));
    }

    private static DayMinuteConverter Clock(string zone, string day) =>
        new(NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value, DateTimeZoneProviders.Tzdb[zone]);
}
