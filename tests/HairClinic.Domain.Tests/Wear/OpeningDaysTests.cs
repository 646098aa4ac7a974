using CsCheck;
using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

public sealed class OpeningDaysTests
{
    [Fact]
    public void A_day_is_open_by_its_weekday()
    {
        var opening = OpenTuesdayToSaturday();

        Assert.False(opening.IsOpen(new(2026, 3, 2)));
        Assert.True(opening.IsOpen(new(2026, 3, 3)));
        Assert.True(opening.IsOpen(new(2026, 3, 7)));
        Assert.False(opening.IsOpen(new(2026, 3, 8)));
    }

    [Fact]
    public void Both_ends_of_a_closure_are_closed()
    {
        var opening = OpenTuesdayToSaturday(Closed(new(2026, 3, 4), new(2026, 3, 6)));

        Assert.True(opening.IsOpen(new(2026, 3, 3)));
        Assert.False(opening.IsOpen(new(2026, 3, 4)));
        Assert.False(opening.IsOpen(new(2026, 3, 6)));
        Assert.True(opening.IsOpen(new(2026, 3, 7)));
    }

    [Fact]
    public void Overlapping_closures_in_any_order_close_every_day_they_cover() =>
        DueFacts.Any.Sample(
            facts =>
            {
                var opening = facts.Opening;
                for (var shift = -20; shift <= 220; shift++)
                {
                    var day = facts.AppliedOn.PlusDays(shift);
                    Assert.Equal(NaiveDueRule.IsOpen(facts, day), opening.IsOpen(day));
                }
            },
            iter: 1_000
        );

    [Theory]
    [InlineData("Pacific/Apia", 2011, 12, 30)] // tz_transitions.csv
    [InlineData("Pacific/Fakaofo", 2011, 12, 30)] // IANA tz database, by way of Noda Time
    [InlineData("Pacific/Kiritimati", 1994, 12, 31)] // IANA tz database, by way of Noda Time
    public void A_day_the_zone_skipped_counts_as_closed(string zone, int year, int month, int day)
    {
        var skipped = new LocalDate(year, month, day);
        var opening = OpenDaily(zone);

        Assert.False(NaiveDueRule.Exists(DateTimeZoneProviders.Tzdb[zone], skipped));
        Assert.False(opening.IsOpen(skipped));
        Assert.True(opening.IsOpen(skipped.PlusDays(-1)));
        Assert.True(opening.IsOpen(skipped.PlusDays(1)));
    }

    [Fact]
    public void No_shorter_change_of_the_clocks_closes_a_day()
    {
        foreach (var change in ZoneTransition.All.Where(change => Math.Abs(change.ShiftMinutes) <= 60))
        {
            var opening = OpenDaily(change.Zone);
            Assert.True(opening.IsOpen(change.LocalBefore.Date));
            Assert.True(opening.IsOpen(change.LocalAfter.Date));
        }
    }

    [Fact]
    public void The_nearest_open_day_is_looked_for_only_where_asked()
    {
        var opening = OpenTuesdayToSaturday();
        var sunday = new LocalDate(2026, 3, 8);

        Assert.Equal(new LocalDate(2026, 3, 7), opening.Nearest(sunday, sunday.PlusDays(-3), sunday.PlusDays(3)));
        Assert.Equal(new LocalDate(2026, 3, 10), opening.Nearest(sunday, sunday, sunday.PlusDays(3)));
        Assert.Null(opening.Nearest(sunday, sunday, sunday.PlusDays(1)));
    }

    // 2 March 2026 is a Monday, the 4th is shut.
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
        Assert.Equal(March(nearest), ShutOnTheFourth.Nearest(March(wanted), March(first), March(last)));

    [Theory]
    [InlineData(2, 1, 2)]
    [InlineData(1, 1, 2)]
    [InlineData(8, 8, 9)]
    [InlineData(9, 8, 9)]
    [InlineData(20, 8, 9)]
    [InlineData(4, 4, 4)]
    public void Where_no_day_of_the_stretch_is_open_there_is_none(int wanted, int first, int last) =>
        Assert.Null(ShutOnTheFourth.Nearest(March(wanted), March(first), March(last)));

    [Fact]
    public void Weekdays_are_stored_from_Monday_on()
    {
        Assert.Equal(0b000_0001, WeekdaySet.Of(IsoDayOfWeek.Monday).Bits);
        Assert.Equal(0b100_0000, WeekdaySet.Of(IsoDayOfWeek.Sunday).Bits);
        Assert.True(new WeekdaySet(0b011_1110).Contains(IsoDayOfWeek.Saturday));
        Assert.False(new WeekdaySet(0b011_1110).Contains(IsoDayOfWeek.Monday));
        Assert.True(WeekdaySet.None.IsEmpty);
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeekdaySet(128));
    }

    private static OpeningDays ShutOnTheFourth => OpenTuesdayToSaturday(Closed(March(4), March(4)));

    private static LocalDate March(int day) => new(2026, 3, day);
}
