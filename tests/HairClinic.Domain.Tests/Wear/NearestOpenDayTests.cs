using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>2 March 2026 is a Monday; the salon is open from Tuesday to Saturday.</summary>
public sealed class NearestOpenDayTests
{
    [Theory]
    [InlineData(3, 3, 1, 10)]
    // A tie: Wednesday is shut, Tuesday comes before Thursday.
    [InlineData(4, 3, 1, 10)]
    // Sunday and Monday are nearest to Saturday and Tuesday.
    [InlineData(8, 7, 1, 14)]
    [InlineData(9, 10, 1, 14)]
    // Where the wish lies outside the stretch, the end of it.
    [InlineData(20, 7, 3, 7)]
    [InlineData(1, 5, 5, 7)]
    // The nearest lies outside, a farther one inside.
    [InlineData(8, 10, 8, 14)]
    [InlineData(9, 7, 5, 9)]
    public void The_open_day_nearest_to_the_one_wanted_within_a_stretch(int wanted, int nearest, int first, int last) =>
        Assert.Equal(March(nearest), Shut(4).Nearest(March(wanted), March(first), March(last)));

    [Theory]
    [InlineData(2, 1, 2)]
    [InlineData(1, 1, 2)]
    [InlineData(8, 8, 9)]
    [InlineData(9, 8, 9)]
    [InlineData(20, 8, 9)]
    [InlineData(4, 4, 4)]
    public void Where_no_day_of_the_stretch_is_open_there_is_none(int wanted, int first, int last) =>
        Assert.Null(Shut(4).Nearest(March(wanted), March(first), March(last)));

    private static OpeningDays Shut(int day) => OpenTuesdayToSaturday(Closed(March(day), March(day)));

    private static LocalDate March(int day) => new(2026, 3, day);
}
