using System.Diagnostics.CodeAnalysis;
using CsvHelper;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>One pass over one file. Used once.</summary>
internal sealed class SheetTextParser(DecodedText text, SheetLimits limits)
{
    private readonly List<SheetRow> _rows = [];
    private readonly List<SheetProblem> _rowProblems = [];
    private bool _suspect;
    private bool _textAfterQuote;

    // Lines of the file that are no rows of the sheet: line breaks within cells, and the line that announces the separator.
    private int _beyondRows;
    private int? _unclosedSince;

    public SheetParseResult Parse()
    {
        var separator = SeparatorSniffer.Sniff(text.Utf8);
        // An announced separator is left to the parser, which skips the announcing line but still counts it.
        char? given = SeparatorSniffer.DeclaredSeparator(text.Utf8.Span) is null ? separator : null;
        _beyondRows = given is null ? 1 : 0;
        using var reader = CsvReader.Create(text.Utf8, SheetReader.CsvOptions(given, _ => _suspect = true));

        if (Next(reader, separator) is not { } first)
            return Unclosed() ?? SheetParseResult.Refused(null, "This file is empty. Its first line must hold the names of the columns.");
        var headings = SheetHeaderRow.From(first, limits.Columns);
        if (headings.Problem is { } problem)
            return new SheetParseResult(null, problem);
        while (Next(reader, separator) is { } row)
        {
            if (_rows.Count + _rowProblems.Count == limits.Rows)
                return SheetParseResult.Refused(row.Row, "This file has more than {0} rows. Split it into several files.", limits.Rows);
            CheckRow(row, headings.Names);
        }
        return Unclosed() ?? Finished(headings.Names, separator);
    }

    /// <summary>The next row with anything in it. Null at the end, and at a quote that runs to the end.</summary>
    private SheetRow? Next(CsvReader reader, char separator)
    {
        _suspect = false;
        while (reader.Read())
        {
            var line = (int)reader.LineNumber;
            var defects = _suspect ? QuoteCheckResult.Check(reader.RawRecord, separator, line) : null;
            (_suspect, _textAfterQuote, _unclosedSince) = (false, defects?.TextAfterClosingQuote == true, defects?.UnclosedSince);
            if (_unclosedSince is not null)
                return null;
            var cells = new string[reader.FieldCount];
            for (var column = 0; column < cells.Length; column++)
                cells[column] = reader.GetString(column);
            if (!Array.TrueForAll(cells, string.IsNullOrWhiteSpace))
            {
                var row = line - _beyondRows;
                _beyondRows += cells.Sum(LineBreaks);
                return new SheetRow(row, cells);
            }
        }
        return null;
    }

    private static int LineBreaks(string cell) =>
        cell.Count(c => c == '\n') + cell.Where((c, i) => c == '\r' && !(i + 1 < cell.Length && cell[i + 1] == '\n')).Count();

    private void CheckRow(SheetRow row, IReadOnlyList<string> headers)
    {
        if (_textAfterQuote)
            Report(row, "Text follows a closing quote. Write a quote inside a quoted cell twice.");
        else if (row.Cells.Count < headers.Count)
            Report(row, "This row has {0} cells where {1} were expected.", row.Cells.Count, headers.Count);
        else if (row.Cells.Skip(headers.Count).Any(cell => !string.IsNullOrWhiteSpace(cell)))
        {
            Report(
                row,
                "This row has {0} cells where {1} were expected. Put a cell that contains the separator in quotes.",
                row.Cells.Count,
                headers.Count
            );
        }
        else
        {
            // Spreadsheets pad rows with empty cells; those beyond the headings hold nothing to lose.
            _rows.Add(row.Cells.Count == headers.Count ? row : row with { Cells = [.. row.Cells.Take(headers.Count)] });
        }
    }

    private void Report(SheetRow row, string template, params object[] arguments) =>
        _rowProblems.Add(new SheetProblem(row.Row, new Sentence(template, arguments)));

    private SheetParseResult? Unclosed() =>
        _unclosedSince is { } line
            ? SheetParseResult.Refused(
                line,
                "A quote opened on line {0} is never closed, so everything after it would be one cell. Close it or remove it.",
                line
            )
            : null;

    private SheetParseResult Finished(IReadOnlyList<string> headers, char separator) =>
        _rows.Count + _rowProblems.Count == 0
            ? SheetParseResult.Refused(null, "This file has the names of the columns but no rows below them.")
            : new SheetParseResult(new Sheet(headers, _rows, _rowProblems, separator, text.Encoding), null);
}

/// <summary>A file as rows. Every row has one cell per header; rows that do not are in <see cref="RowProblems"/> instead.</summary>
public sealed record Sheet(
    IReadOnlyList<string> Headers,
    IReadOnlyList<SheetRow> Rows,
    IReadOnlyList<SheetProblem> RowProblems,
    char Separator,
    SheetEncoding Encoding
);

/// <summary>The first filled row as column names: trimmed, empty ones at the end dropped, each name once.</summary>
internal sealed record SheetHeaderRow(IReadOnlyList<string> Names, SheetProblem? Problem)
{
    public static SheetHeaderRow From(SheetRow first, int mostColumns)
    {
        var width = first.Cells.Count;
        while (width > 0 && string.IsNullOrWhiteSpace(first.Cells[width - 1]))
            width--;
        if (width > mostColumns)
            return Refused(first, "This file has {0} columns; at most {1} can be read.", width, mostColumns);
        var names = new string[width];
        var seen = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        for (var column = 0; column < width; column++)
        {
            var name = first.Cells[column].Trim();
            // Shown to people so that they can still choose a column which nobody named.
            names[column] = name.Length > 0 ? name : string.Create(CultureInfo.InvariantCulture, $"({column + 1})");
            if (!seen.TryAdd(names[column], column))
            {
                return Refused(
                    first,
                    "Columns {0} and {1} are both called \"{2}\". Give each column a name of its own.",
                    seen[names[column]] + 1,
                    column + 1,
                    names[column]
                );
            }
        }
        return new SheetHeaderRow(names, null);
    }

    private static SheetHeaderRow Refused(SheetRow row, string template, params object[] arguments) =>
        new([], new SheetProblem(row.Row, new Sentence(template, arguments)));
}

/// <summary>What keeps a file, or one row of it, from being read. The row is null when it concerns the whole file.</summary>
public sealed record SheetProblem(int? Row, Sentence Sentence);

/// <summary>Either a sheet, or the one reason why the file is not one.</summary>
public sealed record SheetParseResult(Sheet? Sheet, SheetProblem? Problem)
{
    [MemberNotNullWhen(true, nameof(Sheet))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool IsReadable => Sheet is not null;

    public static SheetParseResult Refused(int? row, string template, params object[] arguments) =>
        new(null, new SheetProblem(row, new Sentence(template, arguments)));
}

/// <summary>
/// One record: its row, counted from 1 as a spreadsheet counts it, and its cells exactly as written. After a cell with a line break in it
/// the row is no longer the line of the file.
/// </summary>
public sealed record SheetRow(int Row, IReadOnlyList<string> Cells);

/// <summary>What is wrong with the quotes of one record.</summary>
/// <remarks>The parser names only the first defect of a record, and a stray quote, which does no harm, may hide a worse one.</remarks>
/// <param name="TextAfterClosingQuote">A quoted cell goes on after its closing quote.</param>
/// <param name="UnclosedSince">The line on which a quote opened that is never closed, or null.</param>
internal sealed record QuoteCheckResult(bool TextAfterClosingQuote, int? UnclosedSince)
{
    private enum Place
    {
        CellStart,
        Plain,
        Quoted,
        AfterQuote,
    }

    /// <param name="record">The record as it stands in the file, without its line end.</param>
    /// <param name="separator">The separator of the file.</param>
    /// <param name="firstLine">The line on which the record starts.</param>
    public static QuoteCheckResult Check(ReadOnlySpan<byte> record, char separator, int firstLine)
    {
        var line = firstLine;
        var opened = firstLine;
        var place = Place.CellStart;
        var textAfter = false;
        for (var at = 0; at < record.Length; at++)
        {
            var character = record[at];
            if (place == Place.CellStart && character == '"')
                opened = line;
            textAfter |= place == Place.AfterQuote && character != '"' && character != separator;
            place = (place, character) switch
            {
                (Place.CellStart, (byte)'"') => Place.Quoted,
                (Place.Quoted, (byte)'"') => Place.AfterQuote,
                (Place.Quoted, _) => Place.Quoted,
                (Place.AfterQuote, (byte)'"') => Place.Quoted,
                _ => character == separator ? Place.CellStart : Place.Plain,
            };
            var pair = character == '\r' && at + 1 < record.Length && record[at + 1] == '\n';
            line += character == '\n' || (character == '\r' && !pair) ? 1 : 0;
        }
        return new QuoteCheckResult(textAfter, place == Place.Quoted ? opened : null);
    }
}

/// <summary>Chooses the separator under which the first rows have the steadiest number of columns.</summary>
internal static class SeparatorSniffer
{
    /// <summary>The one that prose contains most often comes last: it loses a tie.</summary>
    public static readonly char[] Candidates = ['\t', ';', ','];

    private const int RowsLookedAt = 50;

    public static char Sniff(ReadOnlyMemory<byte> utf8) =>
        DeclaredSeparator(utf8.Span) ?? Candidates.MaxBy(separator => Steadiness(utf8, separator));

    /// <summary>Some spreadsheets write a first line <c>sep=;</c> that is not part of the table.</summary>
    public static char? DeclaredSeparator(ReadOnlySpan<byte> utf8) =>
        utf8.Length >= 5
        && utf8.StartsWith("sep="u8)
        && Candidates.Contains((char)utf8[4])
        && (utf8.Length == 5 || utf8[5] is (byte)'\r' or (byte)'\n')
            ? (char)utf8[4]
            : null;

    /// <summary>First the share of rows as wide as the header, then the width; a header of one column says nothing.</summary>
    private static (double Share, int Width) Steadiness(ReadOnlyMemory<byte> utf8, char separator)
    {
        using var reader = CsvReader.Create(utf8, SheetReader.CsvOptions(separator));
        if (!reader.Read() || reader.FieldCount < 2)
            return (0, 0);
        var width = reader.FieldCount;
        int rows = 1,
            steady = 1;
        while (rows < RowsLookedAt && reader.Read())
        {
            rows++;
            steady += reader.FieldCount == width ? 1 : 0;
        }
        return ((double)steady / rows, width);
    }
}
