namespace HairClinic.Web.Features.Binder.Sheets;

public sealed record EvidenceCell(int Row, string Value);
