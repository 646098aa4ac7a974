using CsvHelper;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>One pass over one file. Used once.</summary>
internal sealed class SheetPass(SheetText text, SheetLimits limits)
{
    private readonly List<SheetRow> _rows = [];
    private readonly List<SheetProblem> _rowProblems = [];
    private bool _suspect;
    private bool _textAfterQuote;

    // Lines of the file that are no rows of the sheet: line breaks within cells, and the line that announces the separator.
    private int _beyondRows;
    private int? _unclosedSince;

    public SheetReading Read()
    {
        var separator = SeparatorSniffer.Sniff(text.Utf8);
        // An announced separator is left to the parser, which skips the announcing line but still counts it.
        char? given = SeparatorSniffer.Announced(text.Utf8.Span) is null ? separator : null;
        _beyondRows = given is null ? 1 : 0;
        using var reader = CsvReader.Create(text.Utf8, SheetReader.Options(given, _ => _suspect = true));

        if (Next(reader, separator) is not { } first)
        {
            return Unclosed() ?? SheetReading.Refused(null, "This file is empty. Its first line must hold the names of the columns.");
        }
        var headings = SheetHeadings.From(first, limits.Columns);
        if (headings.Problem is { } problem)
        {
            return new SheetReading(null, problem);
        }
        while (Next(reader, separator) is { } row)
        {
            if (_rows.Count + _rowProblems.Count == limits.Rows)
            {
                return SheetReading.Refused(row.Row, "This file has more than {0} rows. Split it into several files.", limits.Rows);
            }
            Take(row, headings.Names);
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
            var defects = _suspect ? QuoteDefects.Of(reader.RawRecord, separator, line) : null;
            (_suspect, _textAfterQuote, _unclosedSince) = (false, defects?.TextAfterClosingQuote == true, defects?.UnclosedSince);
            if (_unclosedSince is not null)
            {
                return null;
            }
            var cells = new string[reader.FieldCount];
            for (var column = 0; column < cells.Length; column++)
            {
                cells[column] = reader.GetString(column);
            }
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

    private void Take(SheetRow row, IReadOnlyList<string> headers)
    {
        if (_textAfterQuote)
        {
            Report(row, "Text follows a closing quote. Write a quote inside a quoted cell twice.");
        }
        else if (row.Cells.Count < headers.Count)
        {
            Report(row, "This row has {0} cells where {1} were expected.", row.Cells.Count, headers.Count);
        }
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

    private SheetReading? Unclosed() =>
        _unclosedSince is { } line
            ? SheetReading.Refused(
                line,
                "A quote opened on line {0} is never closed, so everything after it would be one cell. Close it or remove it.",
                line
            )
            : null;

    private SheetReading Finished(IReadOnlyList<string> headers, char separator) =>
        _rows.Count + _rowProblems.Count == 0
            ? SheetReading.Refused(null, "This file has the names of the columns but no rows below them.")
            : new SheetReading(new Sheet(headers, _rows, _rowProblems, separator, text.Encoding), null);
}
