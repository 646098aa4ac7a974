namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>
/// Reads cells as what their columns say they are, and gathers what cannot be read. A blank cell, and a column without
/// a source, read as null; a blank cell in a required column is a problem.
/// </summary>
public sealed class CellReader(ColumnMapping mapping, SheetConventions conventions)
{
    public const int LongestText = 4000;

    /// <summary>Room for any value and for many revisions of a promise; longer cells would cost time to take apart.</summary>
    public const int LongestValue = 400;

    private readonly List<CellProblem> _problems = [];
    private readonly Dictionary<string, PhoneCellParser> _phones = [];

    public IReadOnlyList<CellProblem> Problems => _problems;

    public string? Text(SheetRow row, SheetColumn column) => TryRead<string>(row, column, text => text, out var read) ? read : null;

    public string? Code(SheetRow row, SheetColumn column) => TryRead(row, column, CodeCellParser.Parse, out var read) ? read : null;

    public string? Email(SheetRow row, SheetColumn column) => TryRead(row, column, EmailCellParser.Parse, out var read) ? read : null;

    /// <summary>
    /// The country (ISO 3166, or empty for nobody's) whose phone numbers the clients of the salon of that name write; null where the
    /// conventions say.
    /// </summary>
    public Func<string, string?> RegionAt { get; set; } = _ => null;

    public string? Phone(SheetRow row, SheetColumn column, string? salon = null) =>
        TryRead(row, column, text => ReadPhone(text, (salon is null ? null : RegionAt(salon)) ?? conventions.Region), out var read)
            ? read
            : null;

    public string? Currency(SheetRow row, SheetColumn column) => TryRead(row, column, CurrencyCellParser.Parse, out var read) ? read : null;

    /// <summary>The <see cref="SheetChoice.Name"/> of the choice.</summary>
    public string? Choice(SheetRow row, SheetColumn column) =>
        TryRead(row, column, text => ChoiceCellParser.Parse(text, column.Choices), out var read) ? read : null;

    public LocalDate? Date(SheetRow row, SheetColumn column) =>
        TryRead(row, column, text => DateCellParser.Parse(text, conventions.DateOrder), out var read) ? read : null;

    /// <summary>Empty for a blank cell.</summary>
    public IReadOnlyList<LocalDate> Dates(SheetRow row, SheetColumn column) =>
        TryRead(row, column, text => DateCellParser.ParseMany(text, conventions.DateOrder), out var read) ? read! : [];

    public LocalTime? Time(SheetRow row, SheetColumn column) => TryRead(row, column, TimeCellParser.Parse, out var read) ? read : null;

    public bool? YesNo(SheetRow row, SheetColumn column) => TryRead(row, column, YesNoCellParser.Parse, out var read) ? read : null;

    /// <summary>Empty for a blank cell.</summary>
    public IReadOnlyList<IsoDayOfWeek> Weekdays(SheetRow row, SheetColumn column) =>
        TryRead(row, column, WeekdaysCellParser.Parse, out var read) ? read! : [];

    public decimal? Number(SheetRow row, SheetColumn column) =>
        TryRead(row, column, text => NumberCellParser.Parse(text, conventions.DecimalMark, column.Least, column.Most), out var read)
            ? read
            : null;

    public int? WholeNumber(SheetRow row, SheetColumn column) =>
        TryRead(row, column, text => NumberCellParser.ParseWhole(text, conventions.DecimalMark, column.Least, column.Most), out var read)
            ? read
            : null;

    public int? Minutes(SheetRow row, SheetColumn column) =>
        TryRead(row, column, text => MinutesCellParser.Parse(text, conventions.DecimalMark, column.Least, column.Most), out var read)
            ? read
            : null;

    /// <summary>In the currency that the row names, else in that of the conventions.</summary>
    public SheetMoney? Money(SheetRow row, SheetColumn column)
    {
        var named = CurrencyOf(row) ?? conventions.Currency;
        // A currency that cannot be read is reported in its own column; the amount cannot be judged until it is.
        return
            CurrencyCellParser.Parse(named).Value is { } currency
            && TryRead(row, column, text => MoneyCellParser.Parse(text, currency, conventions.DecimalMark), out var read)
            ? read
            : null;
    }

    /// <summary>Reads every cell of a row as its column says, for its problems alone.</summary>
    public void CheckCells(SheetRow row)
    {
        foreach (var column in mapping.Kind.Columns)
            _ = ReadAs(row, column);
    }

    private object? ReadAs(SheetRow row, SheetColumn column) =>
        column.Type switch
        {
            ColumnType.Code => Code(row, column),
            ColumnType.Date => Date(row, column),
            ColumnType.Dates => Dates(row, column),
            ColumnType.Time => Time(row, column),
            ColumnType.WholeNumber => WholeNumber(row, column),
            ColumnType.DecimalNumber => Number(row, column),
            ColumnType.Minutes => Minutes(row, column),
            ColumnType.Money => Money(row, column),
            ColumnType.Currency => Currency(row, column),
            ColumnType.YesNo => YesNo(row, column),
            ColumnType.Choice => Choice(row, column),
            ColumnType.Weekdays => Weekdays(row, column),
            ColumnType.Phone => Phone(row, column),
            ColumnType.Email => Email(row, column),
            _ => Text(row, column),
        };

    private CellParseResult<string> ReadPhone(string text, string region)
    {
        if (SpreadsheetArtifacts.IsScientificNotation(text))
            return new Sentence("the whole number; the spreadsheet has shortened it: format the column as text, then save again");
        if (!_phones.TryGetValue(region, out var reader))
            _phones[region] = reader = new PhoneCellParser(region);
        return reader.Parse(text);
    }

    private string? CurrencyOf(SheetRow row)
    {
        var column = mapping.Kind.Columns.FirstOrDefault(column => column.Type == ColumnType.Currency);
        return column is not null && mapping.CellOf(row, column) is { Length: > 0 } named ? named : null;
    }

    private bool TryRead<T>(SheetRow row, SheetColumn column, Func<string, CellParseResult<T>> read, out T? value)
    {
        value = default;
        var text = mapping.CellOf(row, column);
        if (string.IsNullOrEmpty(text))
        {
            if (text is not null && column.Required)
                Report(row, column, "", new Sentence("something: this column may not be blank"));
            return false;
        }
        var reading = Refusal(text, column) is { } refusal ? refusal : read(text);
        value = reading.Value;
        if (reading.Expected is { } expected)
            Report(row, column, text, expected);
        return reading.Succeeded;
    }

    private static Sentence? Refusal(string text, SheetColumn column)
    {
        var longest = column.Type == ColumnType.Text ? LongestText : LongestValue;
        if (text.Length > longest)
            return new Sentence("at most {0} characters; this cell has {1}", longest, text.Length);
        return SpreadsheetArtifacts.IsError(text) ? new Sentence("a value; the spreadsheet shows an error here") : null;
    }

    private void Report(SheetRow row, SheetColumn column, string value, Sentence expected) =>
        _problems.Add(new CellProblem(row.Row, mapping.HeaderOf(column)!, value, expected));
}

/// <summary>A cell that cannot be read: where it is, what it says, and what was expected. The column is the file's own heading.</summary>
public sealed record CellProblem(int Row, string Column, string Value, Sentence Expected);

/// <summary>What a file does not say about itself, and a person must.</summary>
/// <param name="DateOrder">How dates ending in a year are read.</param>
/// <param name="DecimalMark">What comes before the fraction of a number.</param>
/// <param name="Region">Two letters (ISO 3166): whose national phone numbers these are where a row names no salon that lies in a country.</param>
/// <param name="Currency">Three letters (ISO 4217): the currency of amounts that name none.</param>
public sealed record SheetConventions(DateOrder DateOrder, DecimalMark DecimalMark, string Region, string Currency)
{
    /// <summary>The conventions of our own round-trip export.</summary>
    public static SheetConventions ForExport(string region, string currency) =>
        new(DateOrder.YearMonthDay, DecimalMark.Point, region, currency);
}

/// <summary>One of a column's choices, by our word for it or by another that means the same. Answers with our word.</summary>
public static class ChoiceCellParser
{
    public static CellParseResult<string> Parse(string text, IReadOnlyList<SheetChoice> choices)
    {
        var word = WordNormalizer.Normalize(text);
        var chosen = choices.FirstOrDefault(choice => choice.Matches(word));
        return chosen is null ? new Sentence("one of: {0}", string.Join(", ", choices.Select(choice => choice.Name))) : chosen.Name;
    }
}

/// <summary>Looks like an address. Whether anybody reads it, only a message can tell.</summary>
public static partial class EmailCellParser
{
    public static CellParseResult<string> Parse(string text) =>
        text.Length <= 254 && Address().IsMatch(text) ? text : new Sentence("one e-mail address, such as {0}", "name@example.org");

    [GeneratedRegex("""^[^\s@<>,;:"()]+@[^\s@<>,;:"()]+\.[^\s@<>,;:"().]+\z""", RegexOptions.CultureInvariant)]
    private static partial Regex Address();
}

public static class YesNoCellParser
{
    private static readonly string[] Yes = ["yes", "y", "true", "1", "x", "si", "s", "verdadero"];
    private static readonly string[] No = ["no", "n", "false", "0", "falso"];

    public static CellParseResult<bool> Parse(string text)
    {
        var word = WordNormalizer.Normalize(text);
        if (Yes.Contains(word))
            return true;
        return No.Contains(word) ? false : new Sentence("yes or no");
    }
}

/// <summary>What a spreadsheet leaves in a cell when it has lost the value.</summary>
internal static partial class SpreadsheetArtifacts
{
    /// <summary>A long number in short form, such as 4.42E+11.</summary>
    public static bool IsScientificNotation(string text) => Shortened().IsMatch(text);

    /// <summary>An error such as #REF!, or a column too narrow to show its number.</summary>
    public static bool IsError(string text) => Error().IsMatch(text);

    [GeneratedRegex(@"^[0-9](?:[.,][0-9]+)?[eE]\+[0-9]+\z", RegexOptions.CultureInvariant)]
    private static partial Regex Shortened();

    [GeneratedRegex(@"^#(?:N/A|(?:REF|VALUE|NUM|NULL|SPILL|CALC)!|DIV/0!|NAME\?|##+)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Error();
}
