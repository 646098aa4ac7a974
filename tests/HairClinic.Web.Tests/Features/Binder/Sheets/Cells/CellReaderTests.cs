using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Cells;

public sealed class CellReaderTests
{
    private static readonly SheetConventions British = new(DateOrder.DayMonthYear, DecimalMark.Point, "GB", "GBP");

    private static CellReader Cells(SheetKind kind, params string[] headers) => new(ColumnMapping.Propose(kind, headers), British);

    [Fact]
    public void A_problem_names_the_line_the_file_s_own_heading_the_value_and_what_was_expected()
    {
        var cells = Cells(SheetKind.Clients, "Card", "Full name", "Salon", "D.O.B. ", "Date of birth");
        cells.CheckCells(new SheetRow(7, ["C-1", "Ada", "Harbour Street", "", " 31/02/1968 "]));
        var problem = Assert.Single(cells.Problems);
        Assert.Equal((7, "Date of birth", "31/02/1968"), (problem.Row, problem.Column, problem.Value));
        Assert.Equal("a date that exists, written day, month, year, such as {0}", problem.Expected.Template);
        Assert.Equal(["31/12/2025"], problem.Expected.Arguments);
    }

    [Fact]
    public void Blank_cells_are_a_problem_only_in_required_columns()
    {
        var cells = Cells(SheetKind.Clients, "code", "name", "salon", "phone");
        cells.CheckCells(new SheetRow(2, ["C-1", " ", "Harbour Street", ""]));
        Assert.Equal("name", Assert.Single(cells.Problems).Column);
    }

    [Fact]
    public void A_column_without_a_source_reads_as_nothing_and_is_no_problem_of_the_row()
    {
        var cells = Cells(SheetKind.Clients, "code");
        var row = new SheetRow(2, ["C-1"]);
        Assert.Null(cells.Text(row, ClientColumns.Name));
        Assert.Empty(cells.Weekdays(row, ClientColumns.PreferredDays));
        Assert.Equal("C-1", cells.Code(row, ClientColumns.Code));
        Assert.Empty(cells.Problems);
    }

    [Fact]
    public void Every_bad_cell_of_a_row_is_reported_at_once()
    {
        var headers = new[] { "serial", "client code", "applied on", "applied at", "adhesive", "coats", "attachment", "waits kept" };
        var cells = Cells(SheetKind.Bonds, headers);
        cells.CheckCells(new SheetRow(4, ["1.23E+11", "C\n1", "02/04/25", "noon", "#REF!", "three", "nails", "perhaps"]));
        Assert.Equal(headers, cells.Problems.Select(problem => problem.Column));
        Assert.All(cells.Problems, problem => Assert.Equal(4, problem.Row));
    }

    [Fact]
    public void An_amount_is_read_in_the_currency_of_its_row()
    {
        var cells = Cells(SheetKind.Units, "serial", "price", "currency");
        Assert.Equal(new SheetMoney(95_000, "JPY"), cells.Money(new SheetRow(2, ["U-1", "95,000", "jpy"]), UnitColumns.Price));
        Assert.Equal(new SheetMoney(95_000, "GBP"), cells.Money(new SheetRow(3, ["U-1", "950", ""]), UnitColumns.Price));
        Assert.Empty(cells.Problems);
    }

    [Fact]
    public void A_currency_that_cannot_be_read_is_reported_once_and_in_its_own_column()
    {
        var cells = Cells(SheetKind.Units, "serial", "client", "base", "price", "currency");
        cells.CheckCells(new SheetRow(2, ["U-1", "C-1", "lace", "950", "pounds"]));
        Assert.Equal("currency", Assert.Single(cells.Problems).Column);
    }

    [Fact]
    public void A_phone_the_spreadsheet_has_shortened_says_how_to_mend_it()
    {
        var cells = Cells(SheetKind.Clients, "phone");
        Assert.Null(cells.Phone(new SheetRow(2, ["4.42079E+11"]), ClientColumns.Phone));
        Assert.Contains("format the column as text", Assert.Single(cells.Problems).Expected.Template);
    }

    [Fact]
    public void A_cell_that_goes_on_for_ever_is_reported_by_its_length()
    {
        var cells = Cells(SheetKind.Units, "serial", "price", "retired because");
        var row = new SheetRow(2, ["U-1", "1" + new string(' ', 400) + "1", new string('x', 4001)]);
        Assert.Null(cells.Money(row, UnitColumns.Price));
        Assert.Null(cells.Text(row, UnitColumns.RetiredBecause));
        Assert.Equal(
            ["at most 400 characters; this cell has 402", "at most 4000 characters; this cell has 4001"],
            cells.Problems.Select(problem => problem.Expected.ToString())
        );
    }
}
