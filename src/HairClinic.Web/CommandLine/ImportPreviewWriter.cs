using HairClinic.Web.Features.Binder;

namespace HairClinic.Web.CommandLine;

/// <summary>The preview of an import as lines of text.</summary>
public static class ImportPreviewWriter
{
    public static void WriteMapping(TextWriter output, string file, SheetDraft draft)
    {
        var separator = draft.Sheet.Separator == '\t' ? "tab" : draft.Sheet.Separator.ToString();
        output.WriteLine(
            Line($"{file}: {draft.Sheet.Rows.Count} rows of {draft.Mapping.Kind.Name}, {draft.Sheet.Encoding}, separated by {separator}")
        );
        foreach (var column in draft.Mapping.Kind.Columns)
        {
            if (draft.Mapping.HeaderOf(column) is { } header)
                output.WriteLine(Line($"  {column.Name} <- {header}"));
        }
        if (draft.Mapping.UnusedHeaders.Count > 0)
            output.WriteLine(Line($"  left behind: {string.Join(", ", draft.Mapping.UnusedHeaders)}"));
    }

    public static void WriteQuestions(TextWriter errors, string file, SheetDraft draft)
    {
        foreach (var column in draft.Mapping.MissingRequired)
            errors.WriteLine(Line($"{file}: no heading for the column \"{column.Name}\" ({column.Meaning})."));
        if (draft.DateOrder is null)
            errors.WriteLine(Line($"{file}: its dates can be read in more than one way. Say --date-order dmy, mdy or ymd."));
        if (draft.DecimalMark is null)
            errors.WriteLine(Line($"{file}: its numbers can be read in more than one way. Say --decimal-mark point or comma."));
    }

    public static void WriteReport(TextWriter output, TextWriter errors, ImportReport report, bool create)
    {
        output.WriteLine(Line($"{report.Sheet}: {report.New} new, {report.Changed} changed, {report.Unchanged} unchanged."));
        foreach (var problem in report.Problems)
        {
            errors.WriteLine(
                problem.Expected is { } expected
                    ? Line($"{report.Sheet}, row {problem.Row}, {problem.Column}: \"{problem.Value}\"; expected {expected}")
                    : Line($"{report.Sheet}, row {problem.Row}: {problem.Refused}")
            );
        }
        foreach (var doubt in report.Doubts)
            output.WriteLine(Line($"{report.Sheet}, row {doubt.Row}, look at it first: {doubt.Refused}"));
        foreach (var thing in report.Missing)
        {
            var line = Line(
                $"{report.Sheet}: {KindName(thing.What)} \"{thing.Name}\" ({thing.Rows} rows) is not in the book{(create ? "; it is created" : ". Say --create-missing to create it, or correct the file.")}"
            );
            (create ? output : errors).WriteLine(line);
        }
    }

    private static string KindName(MissingKind what) => what is MissingKind.UnitKind ? "Unit kind" : what.ToString();

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
