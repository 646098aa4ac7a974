using CsvHelper;
using NodaTime.Text;

namespace HairClinic.Web.Features.Settings;

/// <summary>The access log as a sheet: times in UTC, words of ours. A name that a spreadsheet would take for a formula is marked as text.</summary>
internal static class AccessLogCsv
{
    private static readonly string[] Headings = ["number", "at", "who", "person", "role", "deed", "client", "reason"];

    public static byte[] Write(IEnumerable<AccessLog.Row> rows)
    {
        using var file = new MemoryStream();
        using (var csv = CsvWriter.Create(file, new CsvWriterOptions { Separator = ',', WriteByteOrderMark = true }, leaveOpen: true))
        {
            WriteRow(csv, Headings);
            foreach (var row in rows)
                WriteRow(
                    csv,
                    [
                        row.Number.ToString(CultureInfo.InvariantCulture),
                        InstantPattern.General.Format(row.At),
                        row.Who.ToString(),
                        AsText(row.Person),
                        row.Role,
                        row.Action.ToString(),
                        AsText(row.ClientCode ?? row.ClientId?.ToString()),
                        AsText(row.Reason),
                    ]
                );
        }
        return file.ToArray();
    }

    private static void WriteRow(CsvWriter csv, IEnumerable<string> cells)
    {
        foreach (var cell in cells)
            csv.WriteField(cell, CsvQuoting.WhenNeeded);
        csv.EndRecord();
    }

    private static string AsText(string? cell) => cell is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + cell : cell ?? "";
}
