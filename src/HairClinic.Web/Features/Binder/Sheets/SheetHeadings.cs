using System.Globalization;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>The first filled row as column names: trimmed, empty ones at the end dropped, each name once.</summary>
internal sealed record SheetHeadings(IReadOnlyList<string> Names, SheetProblem? Problem)
{
    public static SheetHeadings From(SheetRow first, int mostColumns)
    {
        var width = first.Cells.Count;
        while (width > 0 && string.IsNullOrWhiteSpace(first.Cells[width - 1]))
        {
            width--;
        }
        if (width > mostColumns)
        {
            return Refused(first, "This file has {0} columns; at most {1} can be read.", width, mostColumns);
        }
        var names = new string[width];
        var seen = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        for (var column = 0; column < width; column++)
        {
            var name = first.Cells[column].Trim();
            // Shown to people so that they can still choose a column which nobody named.
            names[column] = name.Length > 0 ? name : string.Create(CultureInfo.InvariantCulture, $"({column + 1})");
            if (!seen.TryAdd(names[column], column))
            {
                return Refused(
                    first,
                    "Columns {0} and {1} are both called \"{2}\". Give each column a name of its own.",
                    seen[names[column]] + 1,
                    column + 1,
                    names[column]
                );
            }
        }
        return new SheetHeadings(names, null);
    }

    private static SheetHeadings Refused(SheetRow row, string template, params object[] arguments) =>
        new([], new SheetProblem(row.Row, new Sentence(template, arguments)));
}
