namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>One record: the line of the file on which it starts, counted from 1, and its cells exactly as written.</summary>
public sealed record SheetRow(int Line, IReadOnlyList<string> Cells);
