using HairClinic.Domain.Replay;
using NodaTime;

namespace HairClinic.Domain.Tests.Replay;

public sealed class RefitScheduleTests
{
    private static readonly LocalDate First = new(2025, 1, 20);

    [Theory]
    [InlineData(2025, 1, 31, 1, 0)]
    [InlineData(2025, 2, 1, 1, 1)]
    [InlineData(2027, 1, 20, 1, 24)]
    [InlineData(2027, 6, 30, 3, 9)]
    [InlineData(2031, 1, 20, 3, 24)]
    [InlineData(2035, 1, 20, 6, 20)]
    public void It_learns_monthly_or_in_quarters_and_never_more_than_two_dozen_times(int year, int month, int day, int step, int times)
    {
        var last = new LocalDate(year, month, day);

        var days = RefitSchedule.Days(First, last);

        Assert.Equal((step, times), (RefitSchedule.MonthsBetween(First, last), days.Count));
        Assert.All(days, on => Assert.True(on < last && on.PlusDays(1).Day == 1));
    }

    [Fact]
    public void A_prediction_stands_on_the_last_time_before_its_day()
    {
        var days = RefitSchedule.Days(First, new LocalDate(2025, 4, 15));

        Assert.Equal([new(2025, 1, 31), new(2025, 2, 28), new LocalDate(2025, 3, 31)], days);
        // What was learnt at the end of a day knows what happened on it.
        Assert.Equal(-1, RefitSchedule.Before(days, new LocalDate(2025, 1, 31)));
        Assert.Equal(0, RefitSchedule.Before(days, new LocalDate(2025, 2, 1)));
        Assert.Equal(2, RefitSchedule.Before(days, new LocalDate(2026, 1, 1)));
    }
}
