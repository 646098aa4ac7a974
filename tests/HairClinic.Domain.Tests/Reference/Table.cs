using System.Globalization;

namespace HairClinic.Domain.Tests.Reference;

/// <summary>A table of published or independently computed values. The lines that start with # name its source.</summary>
public sealed class Table
{
    private readonly string[] _header;

    private Table(string[] header, List<string[]> rows) => (_header, Rows) = (header, rows);

    public IReadOnlyList<string[]> Rows { get; }

    public static Table Read(string name)
    {
        var lines = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", name)).Where(line => !line.StartsWith('#')).ToList();
        return new Table(lines[0].Split(','), [.. lines.Skip(1).Where(line => line.Length > 0).Select(line => line.Split(','))]);
    }

    public static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    public string Text(string[] row, string column) => row[Array.IndexOf(_header, column)];

    public double Number(string[] row, string column) => Number(Text(row, column));

    public double[] Numbers(string column) => [.. Rows.Select(row => Number(row, column))];

    public string[] Texts(string column) => [.. Rows.Select(row => Text(row, column))];
}
