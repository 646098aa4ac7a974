namespace HairClinic.Web.Features.Binder.Sheets.Cells;

public sealed record EvidenceCell(int Row, string Value);
