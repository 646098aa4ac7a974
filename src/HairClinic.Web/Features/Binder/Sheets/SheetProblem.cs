namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>What keeps a file, or one row of it, from being read. The row is null when it concerns the whole file.</summary>
public sealed record SheetProblem(int? Row, Sentence Sentence);
