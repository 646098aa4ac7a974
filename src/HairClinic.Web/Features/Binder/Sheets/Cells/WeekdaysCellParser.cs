namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Days of the week in any order: "Tue, Thu", "Mon-Fri", "martes y jueves". Answers from Monday on, each day once.</summary>
public static partial class WeekdaysCellParser
{
    private static readonly string[][] Names =
    [
        ["monday", "mon", "mo", "lunes", "lun"],
        ["tuesday", "tue", "tues", "tu", "martes", "mar"],
        ["wednesday", "wed", "we", "miercoles", "mie"],
        ["thursday", "thu", "thur", "thurs", "th", "jueves", "jue"],
        ["friday", "fri", "fr", "viernes", "vie"],
        ["saturday", "sat", "sa", "sabado", "sab"],
        ["sunday", "sun", "su", "domingo", "dom"],
    ];

    public static CellParseResult<IReadOnlyList<IsoDayOfWeek>> Parse(string text)
    {
        var days = new SortedSet<IsoDayOfWeek>();
        foreach (var part in Separators().Split(text).Where(part => part.Length > 0))
        {
            var ends = Range().Split(part);
            var (first, last) = (Day(ends[0]), Day(ends[^1]));
            if (ends.Length > 2 || first is null || last is null)
                return new Sentence("days of the week, such as {0}", "Tue Thu");
            for (var day = first.Value; ; day = day == IsoDayOfWeek.Sunday ? IsoDayOfWeek.Monday : day + 1)
            {
                days.Add(day);
                if (day == last)
                    break;
            }
        }
        return days.ToArray();
    }

    private static IsoDayOfWeek? Day(string text)
    {
        var word = WordNormalizer.Normalize(text);
        var at = Array.FindIndex(Names, names => names.Contains(word));
        return at < 0 ? null : (IsoDayOfWeek)(at + 1);
    }

    [GeneratedRegex(@"\s*[-\u2013\u2014]\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Range();

    // A range keeps its spaces ("Mon - Fri"): white space separates only where no dash stands beside it.
    [GeneratedRegex(
        @"\s*[,;/|&+]\s*|\s+(?:and|y|e)\s+|(?<![-\u2013\u2014\s])\s+(?![-\u2013\u2014\s])",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase
    )]
    private static partial Regex Separators();
}
