using System.Diagnostics.CodeAnalysis;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Either a sheet, or the one reason why the file is not one.</summary>
public sealed record SheetReading(Sheet? Sheet, SheetProblem? Problem)
{
    [MemberNotNullWhen(true, nameof(Sheet))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool IsReadable => Sheet is not null;

    public static SheetReading Refused(int? row, string template, params object[] arguments) =>
        new(null, new SheetProblem(row, new Sentence(template, arguments)));
}
