using System.Globalization;
using HairClinic.Web.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Ui;

public sealed class DatesTests : UiTestContext
{
    private static readonly LocalDate Today = new(2031, 11, 25);

    [Theory]
    [InlineData("en-GB", "Wed 3 Dec")]
    [InlineData("en-US", "Wed Dec 3")]
    [InlineData("de-DE", "Mi 3. Dez")]
    public void A_day_of_this_year_is_written_in_the_readers_order_without_the_year(string culture, string expected) =>
        Assert.Equal(expected, Plain(Dates.Day(new(2031, 12, 3), Today, CultureInfo.GetCultureInfo(culture))));

    [Theory]
    [InlineData("en-GB", "Sat 3 Jan 2032")]
    [InlineData("en-US", "Sat Jan 3, 2032")]
    public void A_day_of_another_year_names_it(string culture, string expected) =>
        Assert.Equal(expected, Dates.Day(new(2032, 1, 3), Today, CultureInfo.GetCultureInfo(culture)));

    [Theory]
    [InlineData("fr-FR")]
    [InlineData("es-ES")]
    [InlineData("ja-JP")]
    [InlineData("ar-EG")]
    [InlineData("sv-SE")]
    [InlineData("pl-PL")]
    [InlineData("hu-HU")]
    public void Any_culture_can_write_a_day_with_and_without_its_year(string name)
    {
        var culture = CultureInfo.GetCultureInfo(name);
        Assert.NotEmpty(Dates.Day(new(2031, 12, 3), Today, culture));
        Assert.Contains("2032", Dates.Day(new(2032, 1, 3), Today, culture), StringComparison.Ordinal);
    }

    [Fact]
    public void A_moment_is_told_by_the_salons_own_clock()
    {
        var instant = Instant.FromUtc(2031, 12, 3, 23, 30);
        Assert.Equal("Thu 4 Dec, 00:30", Dates.Moment(instant, DateTimeZoneProviders.Tzdb["Europe/Berlin"], Today));
        Assert.Equal("Wed 3 Dec, 18:30", Dates.Moment(instant, DateTimeZoneProviders.Tzdb["America/New_York"], Today));
    }

    [Theory]
    [InlineData(0, "today")]
    [InlineData(1, "tomorrow")]
    [InlineData(-1, "yesterday")]
    [InlineData(8, "in 8 days")]
    [InlineData(-3, "3 days ago")]
    public void Nearness_is_told_in_days(int days, string expected) =>
        Assert.Equal(expected, Dates.Relative(Today.PlusDays(days), Today, Localizer));

    [Theory]
    [InlineData("14:30", 14, 30, 0)]
    [InlineData("14:30:15", 14, 30, 15)]
    public void A_browsers_time_is_read_with_or_without_seconds(string text, int hour, int minute, int second)
    {
        Assert.True(Dates.TryParseIsoTime(text, out var time));
        Assert.Equal(new LocalTime(hour, minute, second), time);
    }

    [Theory]
    [InlineData("2031-02-30")]
    [InlineData("3/12/2031")]
    [InlineData("")]
    public void What_is_no_date_is_not_read_as_one(string text) => Assert.False(Dates.TryParseIso(text, out _));

    private static string Plain(string text) =>
        text.Replace("Dez.", "Dez", StringComparison.Ordinal).Replace("Mi.", "Mi", StringComparison.Ordinal);
}
