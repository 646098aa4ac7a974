using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Cells;

public sealed class MinutesCellParserTests
{
    [Theory]
    [InlineData("90", 90)]
    [InlineData("1h30", 90)]
    [InlineData("1 h 30 min", 90)]
    [InlineData("1:30", 90)]
    [InlineData("2 hours", 120)]
    [InlineData("1h", 60)]
    [InlineData("45 min", 45)]
    [InlineData("45m", 45)]
    [InlineData("1,440", 1440)]
    public void Minutes_are_read_as_people_write_them(string text, int minutes) =>
        Assert.Equal(minutes, MinutesCellParser.Parse(text, DecimalMark.Point, 1, 1440).Value);

    [Theory]
    [InlineData("long", "minutes such as 90, or hours and minutes such as 1h30")]
    [InlineData("1h75", "minutes such as 90, or hours and minutes such as 1h30")]
    [InlineData("25h", "a number from 1 to 1440")]
    [InlineData("0", "a number from 1 to 1440")]
    [InlineData("1.5", "a whole number, without a fraction")]
    public void What_is_no_length_of_time_is_said(string text, string expected) =>
        Assert.Equal(expected, MinutesCellParser.Parse(text, DecimalMark.Point, 1, 1440).Expected?.ToString());
}
