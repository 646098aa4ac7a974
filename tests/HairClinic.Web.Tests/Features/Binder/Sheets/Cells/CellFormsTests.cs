using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Cells;

public sealed class CellFormsTests
{
    [Theory]
    [InlineData("9:05", 9, 5)]
    [InlineData("09.05", 9, 5)]
    [InlineData("9h05", 9, 5)]
    [InlineData("9:05 pm", 21, 5)]
    [InlineData("9 PM", 21, 0)]
    [InlineData("9:05 p. m.", 21, 5)]
    [InlineData("12:30 am", 0, 30)]
    [InlineData("12:30pm", 12, 30)]
    [InlineData("23:59:00", 23, 59)]
    public void Times_read(string text, int hour, int minute) =>
        Assert.Equal(new LocalTime(hour, minute), TimeCellParser.Parse(text).Value);

    [Theory]
    [InlineData("9")]
    [InlineData("24:00")]
    [InlineData("13:00 pm")]
    [InlineData("0:30 am")]
    [InlineData("9:60")]
    [InlineData("9:5")]
    [InlineData("0.375")]
    [InlineData("0,39583333")]
    public void What_is_not_a_time_says_so(string text) => Assert.Contains("09:05", TimeCellParser.Parse(text).Expected!.ToString());

    [Theory]
    [InlineData("1234.5", DecimalMark.Point, 1234.5)]
    [InlineData("1,234.5", DecimalMark.Point, 1234.5)]
    [InlineData("1.234,5", DecimalMark.Comma, 1234.5)]
    [InlineData("1 234 567,5", DecimalMark.Comma, 1234567.5)]
    [InlineData("1'234.5", DecimalMark.Point, 1234.5)]
    [InlineData("-0,125", DecimalMark.Comma, -0.125)]
    public void Numbers_read_by_their_mark(string text, DecimalMark mark, double expected) =>
        Assert.Equal((decimal)expected, NumberCellParser.Parse(text, mark).Value);

    [Theory]
    [InlineData("1,5", DecimalMark.Point)]
    [InlineData("1.5", DecimalMark.Comma)]
    [InlineData("12,34,567", DecimalMark.Point)]
    [InlineData("1,234 567", DecimalMark.Point)]
    [InlineData("0,125", DecimalMark.Point)]
    [InlineData("1e5", DecimalMark.Point)]
    [InlineData("٣", DecimalMark.Point)]
    [InlineData("99999999999999999999999999999999", DecimalMark.Point)]
    [InlineData("", DecimalMark.Point)]
    public void Numbers_in_another_notation_are_refused_and_never_guessed(string text, DecimalMark mark) =>
        Assert.False(NumberCellParser.Parse(text, mark).Succeeded);

    [Fact]
    public void Whole_numbers_have_no_fraction_and_keep_their_bounds()
    {
        Assert.Equal(3, NumberCellParser.ParseWhole("3,0", DecimalMark.Comma, 0, 20).Value);
        Assert.Contains("whole", NumberCellParser.ParseWhole("2.5", DecimalMark.Point, 0, 20).Expected!.ToString());
        Assert.Equal("a number from 0 to 20", NumberCellParser.ParseWhole("21", DecimalMark.Point, 0, 20).Expected!.ToString());
        Assert.False(NumberCellParser.ParseWhole("3000000000", DecimalMark.Point, 0, 10_000_000_000m).Succeeded);
    }

    // Minor units of ISO 4217: yen 0, Bahraini dinar 3, Unidad de Fomento 4, all others here 2.
    [Theory]
    [InlineData("950", "GBP", 95_000)]
    [InlineData("£950.5", "GBP", 95_050)]
    [InlineData("1,250.00 EUR", "EUR", 125_000)]
    [InlineData("$ 12.34", "CAD", 1_234)]
    [InlineData("¥95,000", "JPY", 95_000)]
    [InlineData("1.234", "BHD", 1_234)]
    [InlineData("2.0001", "CLF", 20_001)]
    public void Money_becomes_minor_units(string text, string currency, long minorUnits) =>
        Assert.Equal(new SheetMoney(minorUnits, currency), MoneyCellParser.Parse(text, currency, DecimalMark.Point).Value);

    [Theory]
    [InlineData("€950", "GBP")]
    [InlineData("USD 950", "GBP")]
    [InlineData("950.123", "GBP")]
    [InlineData("950.5", "JPY")]
    [InlineData("-1", "GBP")]
    [InlineData("950,00", "GBP")]
    [InlineData("about 950", "GBP")]
    [InlineData("9999999999999", "GBP")]
    public void Money_of_another_currency_or_notation_is_refused(string text, string currency) =>
        Assert.False(MoneyCellParser.Parse(text, currency, DecimalMark.Point).Succeeded);

    [Theory]
    [InlineData("yes", true)]
    [InlineData("Y", true)]
    [InlineData("TRUE", true)]
    [InlineData("1", true)]
    [InlineData("x", true)]
    [InlineData("Sí", true)]
    [InlineData("No", false)]
    [InlineData("n", false)]
    [InlineData("0", false)]
    [InlineData("FALSO", false)]
    public void Yes_and_no_in_the_words_people_use(string text, bool expected)
    {
        Assert.True(YesNoCellParser.Parse(text).Succeeded);
        Assert.Equal(expected, YesNoCellParser.Parse(text).Value);
        Assert.False(YesNoCellParser.Parse("maybe").Succeeded);
    }

    [Theory]
    [InlineData("No-show", "did not come")]
    [InlineData("CANCELED", "cancelled")]
    [InlineData("no se presento", "did not come")]
    [InlineData("done", "done")]
    public void Choices_answer_with_our_word(string text, string expected) =>
        Assert.Equal(expected, ChoiceCellParser.Parse(text, VisitColumns.State.Choices).Value);

    [Fact]
    public void A_choice_we_do_not_know_lists_those_we_do() =>
        Assert.Equal("one of: dry, normal, oily", ChoiceCellParser.Parse("flaky", ClientColumns.SkinOiliness.Choices).Expected!.ToString());

    [Theory]
    [InlineData("Tue, Thu", "Tuesday Thursday")]
    [InlineData("thursday and TUESDAY", "Tuesday Thursday")]
    [InlineData("Mon-Wed", "Monday Tuesday Wednesday")]
    [InlineData("sat – mon", "Monday Saturday Sunday")]
    [InlineData("martes y sábado", "Tuesday Saturday")]
    [InlineData("miércoles e jueves; vie", "Wednesday Thursday Friday")]
    [InlineData("Sun Sun Mon/Tue", "Monday Tuesday Sunday")]
    public void Weekdays_read_once_each_from_Monday_on(string text, string expected) =>
        Assert.Equal(expected, string.Join(' ', WeekdaysCellParser.Parse(text).Value!));

    [Theory]
    [InlineData("Tue, noon")]
    [InlineData("Mon-Wed-Fri")]
    [InlineData("-")]
    public void What_is_no_weekday_says_so(string text) => Assert.False(WeekdaysCellParser.Parse(text).Succeeded);

    [Theory]
    [InlineData("ros@example.org", true)]
    [InlineData("ros.a+b@mail.example.org", true)]
    [InlineData("ros@example", false)]
    [InlineData("ros@@example.org", false)]
    [InlineData("ros@example.org, ada@example.org", false)]
    [InlineData("Ros <ros@example.org>", false)]
    public void One_address_and_nothing_else(string text, bool reads) => Assert.Equal(reads, EmailCellParser.Parse(text).Succeeded);

    [Theory]
    [InlineData("eur", "EUR")]
    [InlineData("JPY", "JPY")]
    [InlineData("€", null)]
    [InlineData("euro", null)]
    public void Currencies_have_three_letters(string text, string? expected) =>
        Assert.Equal(expected, CurrencyCellParser.Parse(text).Value);
}
