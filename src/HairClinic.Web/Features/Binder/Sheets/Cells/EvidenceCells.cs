namespace HairClinic.Web.Features.Binder.Sheets;

internal static class EvidenceCells
{
    /// <summary>The filled cells of the mapped columns of these types.</summary>
    public static IEnumerable<EvidenceCell> Of(Sheet sheet, ColumnMapping mapping, params ColumnType[] types)
    {
        var columns = mapping.Kind.Columns.Where(column => types.Contains(column.Type)).ToArray();
        return from row in sheet.Rows
            from column in columns
            let text = mapping.CellOf(row, column)
            where text is { Length: > 0 and <= CellReader.LongestValue }
            select new EvidenceCell(row.Row, text);
    }
}
