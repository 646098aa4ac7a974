using System.Text;
using CsCheck;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets;

public sealed class SheetRoundTripTests
{
    private static readonly string[] Awkward =
    [
        "\"",
        "\"\"",
        ",",
        ";",
        "\t",
        "\r\n",
        "\n",
        "\r",
        "=1+1",
        "+",
        "-",
        "@",
        " ",
        "'",
        "|",
        "sep=;",
        "#",
        "\\",
        "\u00A0",
        "é",
        "€",
        "İ",
        "ß",
        "愛",
        "👩🏽‍🦲",
        "\u202E",
        "\uFEFF",
        "\uFFFE",
        "a",
        "Z",
        "0",
        "12,5",
        "2025-03-01",
    ];

    private static readonly Gen<string> Cell = Gen.OneOf(Awkward).Array[0, 6].Select(string.Concat);

    // A row of nothing but white space is a blank row, which the reader skips; here a first cell keeps it.
    private static readonly Gen<(string[] Headers, string[][] Rows)> Table = Gen.Int[1, 6]
        .SelectMany(width =>
            Cell.Array[width]
                .Select(cells => cells.Select((cell, column) => column == 0 ? "k" + cell : cell).ToArray())
                .Array[1, 12]
                .Select(rows => (Enumerable.Range(1, width).Select(column => $"heading {column}").ToArray(), rows))
        );

    private static readonly Gen<Encoding> Encodings = Gen.OneOf<Encoding>(
        new UTF8Encoding(false),
        new UTF8Encoding(true),
        new UnicodeEncoding(bigEndian: false, byteOrderMark: true),
        new UnicodeEncoding(bigEndian: true, byteOrderMark: true)
    );

    [Fact]
    public void Whatever_is_in_the_cells_the_round_trip_export_reads_back_the_same() =>
        Gen.Select(Table, Gen.Bool)
            .Sample((table, mark) => AssertSame(table, SheetWriter.WriteForRoundTrip(table.Headers, table.Rows, mark)), iter: 3000);

    [Fact]
    public void Other_separators_and_encodings_read_back_the_same() =>
        Gen.Select(Table.Where(table => table.Headers.Length > 1), Gen.OneOf(',', ';', '\t'), Encodings, Gen.OneOf("\r\n", "\n", "\r"))
            .Sample(
                (table, separator, encoding, newLine) =>
                {
                    var text = string.Concat(
                        table.Rows.Prepend(table.Headers).Select(row => string.Join(separator, row.Select(Quoted)) + newLine)
                    );
                    AssertSame(table, [.. encoding.GetPreamble(), .. encoding.GetBytes(text)]);
                },
                iter: 3000
            );

    [Fact]
    public void Writing_what_was_read_gives_the_same_bytes() =>
        Table.Sample(
            table =>
            {
                var first = SheetWriter.WriteForRoundTrip(table.Headers, table.Rows);
                var sheet = SheetReader.Read(first).Sheet!;
                Assert.Equal(first, SheetWriter.WriteForRoundTrip(sheet.Headers, sheet.Rows.Select(row => row.Cells)));
            },
            iter: 1000
        );

    [Fact]
    public void Any_bytes_at_all_get_an_answer() => Gen.Byte.Array[0, 400].Sample(Answers, iter: 5000);

    [Fact]
    public void Any_mixture_of_quotes_separators_and_breaks_gets_an_answer() =>
        Gen.OneOf(Awkward).Array[0, 40].Select(parts => Encoding.UTF8.GetBytes(string.Concat(parts))).Sample(Answers, iter: 5000);

    [Fact]
    public void A_file_cut_short_anywhere_gets_an_answer() =>
        Gen.Select(Table, Encodings, Gen.Double.Unit)
            .Sample(
                (table, encoding, share) =>
                {
                    var rows = table.Rows.Prepend(table.Headers).Select(row => string.Join(';', row.Select(Quoted)));
                    byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(string.Join('\n', rows))];
                    Answers(bytes[..(int)(share * bytes.Length)]);
                },
                iter: 2000
            );

    private static void Answers(byte[] bytes)
    {
        var reading = SheetReader.Read(bytes);
        if (!reading.IsReadable)
        {
            Assert.NotEmpty(reading.Problem.Sentence.ToString());
            return;
        }
        var sheet = reading.Sheet;
        Assert.All(sheet.Rows, row => Assert.Equal(sheet.Headers.Count, row.Cells.Count));
        Assert.All(sheet.RowProblems, problem => Assert.NotEmpty(problem.Sentence.ToString()));
        // Row numbers grow from one row to the next, and none lies beyond the file.
        var lines = sheet.Rows.Select(row => row.Row).ToArray();
        Assert.Equal(lines.Order().Distinct(), lines);
        Assert.True(lines.Length == 0 || lines[^1] <= bytes.Length + 1);
    }

    private static void AssertSame((string[] Headers, string[][] Rows) table, byte[] bytes)
    {
        var reading = SheetReader.Read(bytes);
        Assert.True(reading.IsReadable, reading.Problem?.Sentence.ToString());
        Assert.Empty(reading.Sheet.RowProblems);
        Assert.Equal(table.Headers, reading.Sheet.Headers);
        Assert.Equal(table.Rows, reading.Sheet.Rows.Select(row => row.Cells.ToArray()));
        // Each row is the next of the sheet, however many line breaks its cells hold.
        Assert.Equal(Enumerable.Range(2, table.Rows.Length), reading.Sheet.Rows.Select(row => row.Row));
    }

    private static string Quoted(string cell) => $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
