namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A file as rows. Every row has one cell per header; rows that do not are in <see cref="RowProblems"/> instead.</summary>
public sealed record Sheet(
    IReadOnlyList<string> Headers,
    IReadOnlyList<SheetRow> Rows,
    IReadOnlyList<SheetProblem> RowProblems,
    char Separator,
    SheetEncoding Encoding
);
