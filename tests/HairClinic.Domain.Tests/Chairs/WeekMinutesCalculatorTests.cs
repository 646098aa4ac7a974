using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

public sealed class WeekMinutesCalculatorTests
{
    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];

    [Fact]
    public void A_closed_day_is_missing_from_its_week_only()
    {
        // A Wednesday; nine to six on Tuesdays and Saturdays.
        var from = new LocalDate(2027, 2, 3);
        var hours = new OpeningHours(
            [
                new(IsoDayOfWeek.Tuesday, new LocalTime(9, 0), new LocalTime(18, 0)),
                new(IsoDayOfWeek.Saturday, new LocalTime(9, 0), new LocalTime(18, 0)),
            ],
            [new DateInterval(new LocalDate(2027, 2, 13), new LocalDate(2027, 2, 14))],
            London
        );

        Assert.Equal([1080.0, 540.0, 1080.0], WeekMinutesCalculator.OpenMinutesPerWeek(hours, from, 3));
    }

    [Fact]
    public void A_night_that_loses_an_hour_is_an_hour_shorter()
    {
        // In London the clocks go from one to two on 28 March 2027.
        var hours = new OpeningHours([new(IsoDayOfWeek.Sunday, LocalTime.Midnight, new LocalTime(3, 0))], [], London);

        Assert.Equal([120.0, 180.0], WeekMinutesCalculator.OpenMinutesPerWeek(hours, new LocalDate(2027, 3, 22), 2));
    }
}
