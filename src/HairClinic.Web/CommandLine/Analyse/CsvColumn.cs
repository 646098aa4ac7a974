namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>One column of a table, every cell of it: its type is never guessed from its first rows alone.</summary>
/// <param name="Lines">The file's line of each row, for whoever has to correct it.</param>
public sealed record CsvColumn(string Name, string[] Cells, IReadOnlyList<int> Lines)
{
    /// <summary>Some cell is no number.</summary>
    public bool IsText => Array.Exists(Cells, cell => ParseNumber(cell) is null);

    public static double? ParseNumber(string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    public static bool IsEmptyCell(string cell) => cell.Length == 0 || cell is "NA";

    /// <exception cref="Refusal">A cell is empty.</exception>
    public CsvColumn EnsureFilled()
    {
        for (var i = 0; i < Cells.Length; i++)
        {
            if (IsEmptyCell(Cells[i]))
                throw new Refusal("Line {0}: the column \"{1}\" has no value.", Lines[i], Name);
        }
        return this;
    }

    /// <exception cref="Refusal">A cell is empty or no number.</exception>
    public double[] Numbers() => [.. Enumerable.Range(0, Cells.Length).Select(i => NumberAt(i) ?? throw InvalidCell(i, "no number"))];

    /// <summary>The number in a row; null where the cell is empty.</summary>
    public double? NumberAt(int row) => IsEmptyCell(Cells[row]) ? null : ParseNumber(Cells[row]) ?? throw InvalidCell(row, "no number");

    /// <summary>1 where it ended, 0 where it went on.</summary>
    public bool[] Flags() =>
        [
            .. EnsureFilled()
                .Cells.Select(
                    (cell, i) =>
                        (ParseNumber(cell), cell.ToUpperInvariant()) switch
                        {
                            (1, _) or (_, "TRUE") => true,
                            (0, _) or (_, "FALSE") => false,
                            _ => throw InvalidCell(i, "neither 1 (it ended) nor 0 (it went on)"),
                        }
                ),
        ];

    /// <summary>The different values, in sort order: by number where all are numbers, else by their letters.</summary>
    public (string[] Names, int[] Of) Levels()
    {
        var text = EnsureFilled().IsText;
        var names = text
            ? Cells.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray()
            : [.. Cells.DistinctBy(ParseNumber).OrderBy(ParseNumber)];
        var places = names.Select((name, i) => (Key: Key(name), i)).ToDictionary(p => p.Key, p => p.i);
        return (names, [.. Cells.Select(cell => places[Key(cell)])]);

        object Key(string cell) => text ? cell : ParseNumber(cell)!.Value;
    }

    public Refusal InvalidCell(int row, string what) =>
        new("Line {0}: the column \"{1}\" says \"{2}\", which is {3}.", Lines[row], Name, Cells[row], what);
}
