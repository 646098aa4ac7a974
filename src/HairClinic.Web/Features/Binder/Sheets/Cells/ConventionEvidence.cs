namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>What the cells themselves say about a convention that a file does not state.</summary>
/// <param name="Possible">The conventions under which every cell reads that reads under any.</param>
/// <param name="Against">For each of the others, the first cell that rules it out.</param>
/// <param name="IsAmbiguous">Some cell reads differently under two possible conventions: a person must choose.</param>
public sealed record ConventionEvidence<T>(IReadOnlyList<T> Possible, IReadOnlyDictionary<T, EvidenceCell> Against, bool IsAmbiguous)
    where T : struct, Enum
{
    /// <summary>No convention fits all cells: some of them will be reported whatever is chosen.</summary>
    public bool IsContradictory => Possible.Count == 0;

    /// <summary>The convention to use without asking, or null when it must be asked.</summary>
    public T? Settled => IsAmbiguous || IsContradictory ? null : Possible[0];

    internal static ConventionEvidence<T> From<TValue>(IEnumerable<EvidenceCell> cells, Func<string, T, CellParseResult<TValue>> read)
    {
        var conventions = Enum.GetValues<T>();
        var against = new Dictionary<T, EvidenceCell>();
        var differing = new HashSet<(T, T)>();
        foreach (var cell in cells)
        {
            var readings = conventions.Select(convention => read(cell.Value, convention)).ToArray();
            if (!readings.Any(reading => reading.Succeeded))
                continue;
            for (var one = 0; one < conventions.Length; one++)
            {
                if (!readings[one].Succeeded)
                    against.TryAdd(conventions[one], cell);
                for (var other = one + 1; other < conventions.Length; other++)
                {
                    if (!EqualityComparer<TValue>.Default.Equals(readings[one].Value, readings[other].Value))
                        differing.Add((conventions[one], conventions[other]));
                }
            }
        }
        var possible = conventions.Where(convention => !against.ContainsKey(convention)).ToArray();
        var ambiguous = differing.Any(pair => possible.Contains(pair.Item1) && possible.Contains(pair.Item2));
        return new ConventionEvidence<T>(possible, against, ambiguous);
    }
}

public sealed record EvidenceCell(int Row, string Value);

/// <summary>Which orders of day, month and year all date cells allow: 13/05/2025 rules out month first.</summary>
public static class DateOrderDetector
{
    public static ConventionEvidence<DateOrder> Detect(Sheet sheet, ColumnMapping mapping) =>
        Detect(ConventionCellCollector.Collect(sheet, mapping, ColumnType.Date, ColumnType.Dates).SelectMany(Parts));

    public static ConventionEvidence<DateOrder> Detect(IEnumerable<EvidenceCell> cells) =>
        ConventionEvidence<DateOrder>.From(cells, DateCellParser.Parse);

    private static IEnumerable<EvidenceCell> Parts(EvidenceCell cell) =>
        cell.Value.Split('|', StringSplitOptions.TrimEntries).Select(part => cell with { Value = part });
}

internal static class ConventionCellCollector
{
    /// <summary>The filled cells of the mapped columns of these types.</summary>
    public static IEnumerable<EvidenceCell> Collect(Sheet sheet, ColumnMapping mapping, params ColumnType[] types)
    {
        var columns = mapping.Kind.Columns.Where(column => types.Contains(column.Type)).ToArray();
        return from row in sheet.Rows
            from column in columns
            let text = mapping.CellOf(row, column)
            where text is { Length: > 0 and <= CellReader.LongestValue }
            select new EvidenceCell(row.Row, text);
    }
}

/// <summary>Which decimal marks all number cells allow: 12,5 rules out the point, and 1,234 leaves both.</summary>
public static class DecimalMarkDetector
{
    public static ConventionEvidence<DecimalMark> Detect(Sheet sheet, ColumnMapping mapping) =>
        Detect(ConventionCellCollector.Collect(sheet, mapping, ColumnType.WholeNumber, ColumnType.DecimalNumber, ColumnType.Money));

    public static ConventionEvidence<DecimalMark> Detect(IEnumerable<EvidenceCell> cells) =>
        ConventionEvidence<DecimalMark>.From(cells, (text, mark) => NumberCellParser.Parse(MoneyCellParser.WithoutCurrency(text), mark));
}
