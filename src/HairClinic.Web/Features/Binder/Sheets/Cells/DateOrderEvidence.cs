namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Which orders of day, month and year all date cells allow: 13/05/2025 rules out month first.</summary>
public static class DateOrderEvidence
{
    public static ConventionEvidence<DateOrder> From(Sheet sheet, ColumnMapping mapping) =>
        From(EvidenceCells.Collect(sheet, mapping, ColumnType.Date, ColumnType.Dates).SelectMany(Parts));

    public static ConventionEvidence<DateOrder> From(IEnumerable<EvidenceCell> cells) =>
        ConventionEvidence<DateOrder>.From(cells, DateCell.Read);

    private static IEnumerable<EvidenceCell> Parts(EvidenceCell cell) =>
        cell.Value.Split('|', StringSplitOptions.TrimEntries).Select(part => cell with { Value = part });
}

internal static class EvidenceCells
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
