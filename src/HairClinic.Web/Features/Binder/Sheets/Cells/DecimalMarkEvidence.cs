namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Which decimal marks all number cells allow: 12,5 rules out the point, and 1,234 leaves both.</summary>
public static class DecimalMarkEvidence
{
    public static ConventionEvidence<DecimalMark> From(Sheet sheet, ColumnMapping mapping) =>
        From(EvidenceCells.Collect(sheet, mapping, ColumnType.WholeNumber, ColumnType.DecimalNumber, ColumnType.Money));

    public static ConventionEvidence<DecimalMark> From(IEnumerable<EvidenceCell> cells) =>
        ConventionEvidence<DecimalMark>.From(cells, (text, mark) => NumberCell.Read(MoneyCell.Amount(text), mark));
}
