namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A cell that cannot be read: where it is, what it says, and what was expected. The column is the file's own heading.</summary>
public sealed record CellProblem(int Row, string Column, string Value, Sentence Expected);
