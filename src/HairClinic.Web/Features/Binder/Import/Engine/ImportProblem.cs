using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>A row that cannot be brought: where, what it says, and either what was expected there or why the book refuses it.</summary>
/// <param name="Column">The file's own heading; null when it concerns the row as a whole.</param>
/// <param name="Expected">“a date such as …” where the cell is wrong.</param>
/// <param name="Refused">A sentence, where the cell is fine and the book says no.</param>
public sealed record ImportProblem(int Row, string? Column, string? Value, Sentence? Expected, Sentence? Refused);
