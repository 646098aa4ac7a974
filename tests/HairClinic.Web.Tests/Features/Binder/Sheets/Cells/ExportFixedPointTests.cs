using System.Globalization;
using CsCheck;
using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Cells;

public sealed class ExportFixedPointTests
{
    private static readonly SheetConventions Conventions = SheetConventions.ForExport("GB", "GBP");

    // Numbers from ranges kept for fiction (from memory).
    private static readonly string[] Phones = ["+442079460018", "+447700900123", "+12125550123"];

    private static readonly Gen<LocalDate> Date = Gen.Int[0, 90_000].Select(new LocalDate(1901, 1, 1).PlusDays);

    private static readonly Gen<string> Text = Gen.OneOf("=", "\"", ",", ";", "\t", "\r\n", "é", "愛", "x", " ", "'", "|")
        .Array[0, 5]
        .Select(parts => $"a{string.Concat(parts)}z");

    public static TheoryData<string> Kinds => [.. SheetKind.All.Select(kind => kind.Name)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Reading_an_export_and_writing_it_again_gives_the_same_bytes(string name)
    {
        var kind = SheetKind.Find(name)!;
        Row(kind)
            .Array[1, 8]
            .Sample(
                rows =>
                {
                    var export = SheetWriter.WriteForRoundTrip(kind.Headers, rows);
                    var sheet = SheetReader.Read(export).Sheet!;
                    var cells = new CellReader(ColumnMapping.Propose(kind, sheet.Headers), Conventions);
                    var again = sheet.Rows.Select(row => kind.Columns.Select(column => Spelled(cells, row, column)).ToArray()).ToArray();
                    Assert.Empty(cells.Problems);
                    Assert.Equal(export, SheetWriter.WriteForRoundTrip(kind.Headers, again));
                },
                iter: 300
            );
    }

    // German writes a decimal comma, Turkish has two kinds of i, and Arabic as in Saudi Arabia another calendar.
    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_language_of_the_machine_changes_nothing(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            foreach (var kind in SheetKind.All)
            {
                var examples = kind.Columns.Select(column => column.Example).ToArray();
                var cells = new CellReader(ColumnMapping.Propose(kind, kind.Headers), Conventions);
                var row = new SheetRow(2, examples);
                Assert.Equal(examples, kind.Columns.Select(column => Spelled(cells, row, column)));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Gen<string[]> Row(SheetKind kind) =>
        kind.Columns.Aggregate(
            Gen.Const(Array.Empty<string>()),
            (row, column) =>
                Gen.Select(
                    row,
                    Filled(column),
                    Gen.Bool,
                    (before, cell, blank) => (string[])[.. before, blank && !column.Required ? "" : cell]
                )
        );

    private static Gen<string> Filled(SheetColumn column) =>
        column.Type switch
        {
            ColumnType.Code => Gen.Int[0, 9999].Select(number => $"C-{number:0000}"),
            ColumnType.Date => Date.Select(date => CellFormatter.Format(date)),
            ColumnType.Dates => Date.Array[1, 3].Select(dates => CellFormatter.Format(dates)),
            ColumnType.Time => Gen.Int[0, 86_399].Select(second => CellFormatter.Format(LocalTime.FromSecondsSinceMidnight(second))),
            ColumnType.WholeNumber => Gen.Int[(int)column.Least, (int)column.Most].Select(number => CellFormatter.Format(number)),
            ColumnType.DecimalNumber => Gen.Int[0, 5000].Select(hundredths => CellFormatter.Format(hundredths / 100m)),
            // Any number of minor units; the currency of these rows is the pound or not named, which means the pound.
            ColumnType.Money => Gen.Int[0, 10_000_000].Select(minor => CellFormatter.Format(new SheetMoney(minor, "GBP"))),
            ColumnType.Currency => Gen.Const("GBP"),
            ColumnType.YesNo => Gen.Bool.Select(answer => CellFormatter.Format(answer)),
            ColumnType.Choice => Gen.OneOf([.. column.Choices.Select(choice => choice.Name)]),
            ColumnType.Weekdays => Gen.OneOf("Mon", "Tue Thu", "Wed Sat Sun"),
            ColumnType.Phone => Gen.OneOf(Phones),
            ColumnType.Email => Gen.Const("name@example.org"),
            _ => Text,
        };

    private static string Spelled(CellReader cells, SheetRow row, SheetColumn column) =>
        column.Type switch
        {
            ColumnType.Code => CellFormatter.Format(cells.Code(row, column)),
            ColumnType.Date => CellFormatter.Format(cells.Date(row, column)),
            ColumnType.Dates => CellFormatter.Format(cells.Dates(row, column)),
            ColumnType.Time => CellFormatter.Format(cells.Time(row, column)),
            ColumnType.WholeNumber => CellFormatter.Format(cells.WholeNumber(row, column)),
            ColumnType.DecimalNumber => CellFormatter.Format(cells.Number(row, column)),
            ColumnType.Money => CellFormatter.Format(cells.Money(row, column)),
            ColumnType.Currency => CellFormatter.Format(cells.Currency(row, column)),
            ColumnType.YesNo => CellFormatter.Format(cells.YesNo(row, column)),
            ColumnType.Choice => CellFormatter.Format(cells.Choice(row, column)),
            ColumnType.Weekdays => CellFormatter.Format(cells.Weekdays(row, column)),
            ColumnType.Phone => CellFormatter.Format(cells.Phone(row, column)),
            ColumnType.Email => CellFormatter.Format(cells.Email(row, column)),
            _ => CellFormatter.Format(cells.Text(row, column)),
        };
}
