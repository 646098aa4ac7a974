using CsvHelper;
using HairClinic.Web.Shell;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Writes rows as CSV (RFC 4180: CRLF, doubled quotes), one way for programs and another for people.</summary>
public static class SheetWriter
{
    /// <summary>Exact text, comma, UTF-8: what <see cref="SheetReader"/> reads back cell for cell. Not safe to open in a spreadsheet.</summary>
    public static byte[] WriteForRoundTrip(
        IReadOnlyList<string> headers,
        IEnumerable<IReadOnlyList<string>> rows,
        bool byteOrderMark = false
    ) => Write(headers, rows, ',', byteOrderMark, cell => cell);

    /// <summary>For a spreadsheet: cells that would start a formula are made text, so it does not read back exactly.</summary>
    public static byte[] WriteForSpreadsheet(
        IReadOnlyList<string> headers,
        IEnumerable<IReadOnlyList<string>> rows,
        char separator = ','
    ) => Write(headers, rows, separator, byteOrderMark: true, FormulaGuard.Neutralise);

    /// <summary>The same, row by row: of a sheet however long, only what is under way is held.</summary>
    public static async Task WriteAsync(
        Stream output,
        IReadOnlyList<string> headers,
        IAsyncEnumerable<IReadOnlyList<string>> rows,
        bool forPeople,
        CancellationToken cancellation
    )
    {
        Func<string, string> cellText = forPeople ? FormulaGuard.Neutralise : cell => cell;
        var options = new CsvWriterOptions { Separator = ',', WriteByteOrderMark = forPeople };
        await using var csv = CsvWriter.Create(output, options, leaveOpen: true);
        WriteCells(csv, headers, cellText);
        await csv.EndRecordAsync(cancellation);
        await foreach (var row in rows)
        {
            WriteCells(csv, row, cellText);
            await csv.EndRecordAsync(cancellation);
        }
    }

    private static byte[] Write(
        IReadOnlyList<string> headers,
        IEnumerable<IReadOnlyList<string>> rows,
        char separator,
        bool byteOrderMark,
        Func<string, string> cellText
    )
    {
        using var output = new MemoryStream();
        var options = new CsvWriterOptions { Separator = separator, WriteByteOrderMark = byteOrderMark };
        using (var csv = CsvWriter.Create(output, options, leaveOpen: true))
        {
            WriteRow(csv, headers, cellText);
            foreach (var row in rows)
                WriteRow(csv, row, cellText);
        }
        return output.ToArray();
    }

    private static void WriteRow(CsvWriter csv, IReadOnlyList<string> cells, Func<string, string> cellText)
    {
        WriteCells(csv, cells, cellText);
        csv.EndRecord();
    }

    private static void WriteCells(CsvWriter csv, IReadOnlyList<string> cells, Func<string, string> cellText)
    {
        foreach (var cell in cells)
        {
            var text = cellText(cell);
            // Every separator we might sniff is quoted, so that a reader's guess never depends on what a cell says.
            var quoting = text.AsSpan().IndexOfAny(SeparatorSniffer.Candidates) >= 0 ? CsvQuoting.Always : CsvQuoting.WhenNeeded;
            csv.WriteField(text, quoting);
        }
    }
}
