namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>
/// One record: its row, counted from 1 as a spreadsheet counts it, and its cells exactly as written. After a cell with a line break in it
/// the row is no longer the line of the file.
/// </summary>
public sealed record SheetRow(int Row, IReadOnlyList<string> Cells);
