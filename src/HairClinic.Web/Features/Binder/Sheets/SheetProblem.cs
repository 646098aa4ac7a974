namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>What keeps a file, or one row of it, from being read. The line is null when it concerns the whole file.</summary>
public sealed record SheetProblem(int? Line, Sentence Sentence);
