namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Which orders of day, month and year all date cells allow: 13/05/2025 rules out month first.</summary>
public static class DateOrderEvidence
{
    public static ConventionEvidence<DateOrder> From(Sheet sheet, ColumnMapping mapping) =>
        From(EvidenceCells.Of(sheet, mapping, ColumnType.Date, ColumnType.Dates).SelectMany(Parts));

    public static ConventionEvidence<DateOrder> From(IEnumerable<EvidenceCell> cells) =>
        ConventionEvidence<DateOrder>.From(cells, DateCell.Read);

    private static IEnumerable<EvidenceCell> Parts(EvidenceCell cell) =>
        cell.Value.Split('|', StringSplitOptions.TrimEntries).Select(part => cell with { Value = part });
}
