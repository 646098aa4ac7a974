using CsCheck;
using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Cells;

public sealed class DateCellParserTests
{
    [Theory]
    [InlineData("31/12/2025", DateOrder.DayMonthYear, 2025, 12, 31)]
    [InlineData("1.2.2025", DateOrder.DayMonthYear, 2025, 2, 1)]
    [InlineData("01-02-2025", DateOrder.MonthDayYear, 2025, 1, 2)]
    [InlineData("2025/3/4", DateOrder.YearMonthDay, 2025, 3, 4)]
    [InlineData("2025-03-04", DateOrder.MonthDayYear, 2025, 3, 4)]
    [InlineData("2025-03-04 00:00:00", DateOrder.DayMonthYear, 2025, 3, 4)]
    [InlineData("29/02/2024", DateOrder.DayMonthYear, 2024, 2, 29)]
    public void Dates_read_in_the_chosen_order_and_year_first_in_any(string text, DateOrder order, int year, int month, int day) =>
        Assert.Equal(new LocalDate(year, month, day), DateCellParser.Parse(text, order).Value);

    [Theory]
    [InlineData("31/02/2025", "day, month, year")]
    [InlineData("05/13/2025", "day, month, year")]
    [InlineData("29/02/2025", "day, month, year")]
    [InlineData("1/2-2025", "day, month, year")]
    [InlineData("tomorrow", "day, month, year")]
    [InlineData("2025-03-04 09:30", "day, month, year")]
    [InlineData("٣١/١٢/٢٠٢٥", "day, month, year")]
    [InlineData("01/02/25", "a year with four digits")]
    [InlineData("25-02-01", "a year with four digits")]
    [InlineData("01/02/0202", "a year from 1900 to 2199")]
    [InlineData("45658", "inner day number")]
    [InlineData("45658.5", "inner day number")]
    public void What_is_not_a_date_says_what_was_expected(string text, string words)
    {
        var reading = DateCellParser.Parse(text, DateOrder.DayMonthYear);
        Assert.False(reading.Succeeded);
        Assert.Contains(words, reading.Expected!.ToString());
    }

    [Fact]
    public void A_year_at_the_end_is_refused_when_the_year_was_said_to_come_first() =>
        Assert.Contains("year, month, day", DateCellParser.Parse("31/12/2025", DateOrder.YearMonthDay).Expected!.ToString());

    [Fact]
    public void Every_day_reads_back_from_every_order_and_separator() =>
        Gen.Select(Gen.Int[0, 100_000], Gen.Enum<DateOrder>(), Gen.OneOf('-', '/', '.'))
            .Sample(
                (days, order, mark) =>
                {
                    var date = new LocalDate(1901, 1, 1).PlusDays(days);
                    var text = order switch
                    {
                        DateOrder.DayMonthYear => $"{date.Day}{mark}{date.Month}{mark}{date.Year}",
                        DateOrder.MonthDayYear => $"{date.Month}{mark}{date.Day}{mark}{date.Year}",
                        _ => $"{date.Year}{mark}{date.Month}{mark}{date.Day}",
                    };
                    Assert.Equal(date, DateCellParser.Parse(text, order).Value);
                },
                iter: 2000
            );

    [Fact]
    public void Every_revision_of_a_promise_is_kept_in_its_order()
    {
        var reading = DateCellParser.ParseMany("20/03/2025|1/3/2025 | 2025-04-02", DateOrder.DayMonthYear);
        Assert.Equal([new LocalDate(2025, 3, 20), new LocalDate(2025, 3, 1), new LocalDate(2025, 4, 2)], reading.Value!);
        Assert.False(DateCellParser.ParseMany("20/03/2025 | soon", DateOrder.DayMonthYear).Succeeded);
        Assert.False(DateCellParser.ParseMany("20/03/2025 |", DateOrder.DayMonthYear).Succeeded);
    }
}
