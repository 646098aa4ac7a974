using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Cells;

public sealed class ConventionEvidenceTests
{
    private static ConventionEvidence<DateOrder> Dates(params string[] cells) =>
        DateOrderDetector.Detect(cells.Select((cell, index) => new EvidenceCell(index + 2, cell)));

    private static ConventionEvidence<DecimalMark> Numbers(params string[] cells) =>
        DecimalMarkDetector.Detect(cells.Select((cell, index) => new EvidenceCell(index + 2, cell)));

    [Fact]
    public void The_thirteenth_of_May_rules_out_month_first()
    {
        var evidence = Dates("03/04/2025", "13/05/2025");
        Assert.Equal(DateOrder.DayMonthYear, evidence.Settled);
        Assert.Equal(new EvidenceCell(3, "13/05/2025"), evidence.Against[DateOrder.MonthDayYear]);
        Assert.Equal(DateOrder.MonthDayYear, Dates("03/04/2025", "05/13/2025").Settled);
    }

    [Fact]
    public void Days_that_could_be_months_must_be_asked_about()
    {
        var evidence = Dates("03/04/2025", "2025-05-13", "11.12.2025");
        Assert.True(evidence.IsAmbiguous);
        Assert.Null(evidence.Settled);
        Assert.Equal([DateOrder.DayMonthYear, DateOrder.MonthDayYear], evidence.Possible);
    }

    [Fact]
    public void Nothing_need_be_asked_when_both_orders_give_the_same_days()
    {
        Assert.Equal(DateOrder.DayMonthYear, Dates("05/05/2025").Settled);
        Assert.Equal(DateOrder.YearMonthDay, Dates("2025-05-13", "soon", "45658").Settled);
        Assert.Equal(DateOrder.YearMonthDay, Dates().Settled);
    }

    [Fact]
    public void A_file_that_mixes_orders_contradicts_itself()
    {
        var evidence = Dates("13/05/2025", "05/13/2025");
        Assert.True(evidence.IsContradictory);
        Assert.Null(evidence.Settled);
    }

    [Theory]
    [InlineData(DecimalMark.Comma, "12,5", "1.234")]
    [InlineData(DecimalMark.Comma, "1.234,50")]
    [InlineData(DecimalMark.Comma, "0,125")]
    [InlineData(DecimalMark.Point, "£1,234.50", "2,000")]
    [InlineData(DecimalMark.Point, "3", "12 000", "1.5 EUR")]
    [InlineData(DecimalMark.Point)]
    public void The_decimal_mark_is_seen_from_the_numbers(DecimalMark mark, params string[] cells) =>
        Assert.Equal(mark, Numbers(cells).Settled);

    [Fact]
    public void A_mark_before_three_digits_must_be_asked_about() => Assert.True(Numbers("1,234", "7").IsAmbiguous);

    [Fact]
    public void All_date_columns_of_a_sheet_count_revised_promises_included()
    {
        var mapping = ColumnMapping.Propose(SheetKind.Units, ["serial", "ordered on", "promised for", "retired because"]);
        var row = new SheetRow(2, ["U-1", "03/04/2025", "05/06/2025 | 25/06/2025", "05/13/2025"]);
        var evidence = DateOrderDetector.Detect(new Sheet(mapping.Headers, [row], [], ',', SheetEncoding.Utf8), mapping);
        Assert.Equal(DateOrder.DayMonthYear, evidence.Settled);
        Assert.Equal("25/06/2025", evidence.Against[DateOrder.MonthDayYear].Value);
    }
}
