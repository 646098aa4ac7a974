namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A civil day, separated by hyphens, slashes or points. The year has four digits; a midnight after it is ignored.</summary>
public static partial class DateCellParser
{
    public static CellParseResult<LocalDate> Parse(string text, DateOrder order)
    {
        var match = Parts().Match(text);
        if (!match.Success)
        {
            return SerialNumber().IsMatch(text)
                ? new Sentence(
                    "a date such as {0}; this is a spreadsheet's inner day number: format the column as dates, then save again",
                    Example(order)
                )
                : Expected(order);
        }
        var (first, middle, last) = (match.Groups[1].Value, Number(match.Groups[3]), match.Groups[4].Value);
        if (first.Length == 4 && last.Length <= 2)
            return Day(Number(match.Groups[1]), middle, Number(match.Groups[4]), order);
        if (last.Length != 4 || first.Length > 2)
            return new Sentence("a year with four digits, as in {0}", Example(order));
        var year = Number(match.Groups[4]);
        return order switch
        {
            DateOrder.DayMonthYear => Day(year, middle, Number(match.Groups[1]), order),
            DateOrder.MonthDayYear => Day(year, Number(match.Groups[1]), middle, order),
            _ => Expected(order),
        };
    }

    /// <summary>Several dates separated by <c>|</c>, kept in the order in which they stand.</summary>
    public static CellParseResult<IReadOnlyList<LocalDate>> ParseMany(string text, DateOrder order)
    {
        var dates = new List<LocalDate>();
        foreach (var part in text.Split('|', StringSplitOptions.TrimEntries))
        {
            var reading = Parse(part, order);
            if (reading.Expected is { } expected)
                return expected;
            dates.Add(reading.Value);
        }
        return dates;
    }

    private static CellParseResult<LocalDate> Day(int year, int month, int day, DateOrder order)
    {
        if (year is < 1900 or > 2199)
            return new Sentence("a year from 1900 to 2199, as in {0}", Example(order));
        if (month is < 1 or > 12)
            return Expected(order);
        return day >= 1 && day <= CalendarSystem.Iso.GetDaysInMonth(year, month) ? new LocalDate(year, month, day) : Expected(order);
    }

    private static Sentence Expected(DateOrder order) =>
        order switch
        {
            DateOrder.DayMonthYear => new("a date that exists, written day, month, year, such as {0}", Example(order)),
            DateOrder.MonthDayYear => new("a date that exists, written month, day, year, such as {0}", Example(order)),
            _ => new("a date that exists, written year, month, day, such as {0}", Example(order)),
        };

    private static string Example(DateOrder order) =>
        order switch
        {
            DateOrder.DayMonthYear => "31/12/2025",
            DateOrder.MonthDayYear => "12/31/2025",
            _ => "2025-12-31",
        };

    private static int Number(Group group) => int.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([0-9]{1,4})([-/.])([0-9]{1,2})\2([0-9]{1,4})(?:[T ]0{1,2}:00(?::00(?:\.0+)?)?)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();

    // Day 20000 is in 1954 and day 79999 in 2119, counted as spreadsheets do from 1900: common practice, no source.
    [GeneratedRegex(@"^[2-7][0-9]{4}(?:[.,][0-9]+)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex SerialNumber();
}

/// <summary>How dates that end in a year are read. Dates that begin with a four-digit year are year, month, day under all three.</summary>
public enum DateOrder
{
    YearMonthDay,
    DayMonthYear,
    MonthDayYear,
}
