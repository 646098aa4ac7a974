namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>One column of a table. What it holds is said by whoever names it, and never guessed from its cells.</summary>
/// <param name="Lines">The file's line of each row, for whoever has to correct it.</param>
public sealed record CsvColumn(string Name, string[] Cells, IReadOnlyList<int> Lines)
{
    public static bool IsEmptyCell(string cell) => cell.Length == 0 || cell is "NA";

    /// <param name="mayNameKinds">Its words would do as the names of kinds: the refusal says how to have that.</param>
    /// <exception cref="Refusal">A cell is empty, no number, or a number of no such size.</exception>
    public double[] Numbers(NumberSize size, bool mayNameKinds = false) =>
        [.. EnsureFilled().Cells.Select((_, i) => NumberAt(i, size, mayNameKinds)!.Value)];

    /// <summary>The number in a row; null where the cell is empty.</summary>
    public double? NumberAt(int row, NumberSize size, bool mayNameKinds = false)
    {
        if (IsEmptyCell(Cells[row]))
            return null;
        if (NumberWord.TryParse(Cells[row], out var number, out var why))
            return size.WhyNot(number) is { } reason ? throw InvalidCell(row, reason) : number;
        throw mayNameKinds && why == NumberWord.NoNumber
            ? new Refusal("Line {0}: \"{1}\" in {2} is no number. If {2} names kinds, say --factor {2}.", Lines[row], Cells[row], Name)
            : InvalidCell(row, why);
    }

    /// <summary>1 where it ended, 0 where it went on.</summary>
    public bool[] Flags() =>
        [
            .. EnsureFilled()
                .Cells.Select(
                    (cell, i) =>
                        (NumberWord.Parse(cell), cell.ToUpperInvariant()) switch
                        {
                            (1, _) or (_, "TRUE") => true,
                            (0, _) or (_, "FALSE") => false,
                            _ => throw InvalidCell(i, "neither 1 (it ended) nor 0 (it went on)"),
                        }
                ),
        ];

    /// <summary>The different words as they are written, and which each row has: numbers by their size, then words by their letters.</summary>
    public (string[] Names, int[] Of) Kinds()
    {
        var names = EnsureFilled()
            .Cells.Distinct(StringComparer.Ordinal)
            .OrderBy(name => NumberWord.Parse(name) ?? double.PositiveInfinity)
            .ThenBy(name => name, StringComparer.Ordinal)
            .ToArray();
        var places = names.Select((name, i) => (name, i)).ToDictionary(p => p.name, p => p.i, StringComparer.Ordinal);
        return (names, [.. Cells.Select(cell => places[cell])]);
    }

    /// <summary>The different numbers, by their size: 7 and 7.0 are one.</summary>
    public (string[] Names, int[] Of) DifferentNumbers()
    {
        var numbers = Numbers(NumberSize.Any);
        var places = numbers.Distinct().Order().Select((number, i) => (number, i)).ToDictionary(p => p.number, p => p.i);
        var of = Array.ConvertAll(numbers, number => places[number]);
        return ([.. Enumerable.Range(0, places.Count).Select(i => Cells[Array.IndexOf(of, i)])], of);
    }

    /// <exception cref="Refusal">A cell is empty.</exception>
    public CsvColumn EnsureFilled()
    {
        for (var i = 0; i < Cells.Length; i++)
        {
            if (IsEmptyCell(Cells[i]))
            {
                throw Cells[i].Length == 0
                    ? new Refusal("Line {0}: {1} has no value.", Lines[i], Name)
                    : new Refusal("Line {0}: \"{1}\" in {2} stands for no value.", Lines[i], Cells[i], Name);
            }
        }
        return this;
    }

    public Refusal InvalidCell(int row, string what) => new("Line {0}: \"{1}\" in {2} is {3}.", Lines[row], Cells[row], Name, what);
}

/// <summary>The sizes of which sums can be made without losing or overflowing all digits; 0 is of every size.</summary>
public readonly record struct NumberSize(double Least, double Most)
{
    public static readonly NumberSize Any = new(0, double.MaxValue);
    public static readonly NumberSize Covariate = new(1e-250, 1e250);
    public static readonly NumberSize Time = new(1e-9, 1e12);
    public static readonly NumberSize Weight = new(1e-9, 1e9);

    public string? WhyNot(double number) =>
        Math.Abs(number) > Most ? FormattableString.Invariant($"too large a number: {Most} is the most")
        : number != 0 && Math.Abs(number) < Least ? FormattableString.Invariant($"too small a number: {Least} is the least")
        : null;
}
