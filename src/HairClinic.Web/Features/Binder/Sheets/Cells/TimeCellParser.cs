namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A time on the wall clock: 9:05, 09.05, 9h05, 9:05 pm, 9 pm.</summary>
public static partial class TimeCellParser
{
    private static readonly Sentence Expected = new("a time such as {0}", "09:05");

    public static CellParseResult<LocalTime> Parse(string text)
    {
        var match = Parts().Match(text);
        if (!match.Success)
        {
            return DayFraction().IsMatch(text)
                ? new Sentence(
                    "a time such as {0}; this is a spreadsheet's inner fraction of a day: format the column as times, then save again",
                    "09:05"
                )
                : Expected;
        }
        var half = match.Groups["half"].Value;
        var (hour, minute, second) = (Number(match.Groups["hour"]), Number(match.Groups["minute"]), Number(match.Groups["second"]));
        var namesHalf = half.Length > 0;
        // "9" alone may be anything; "0:30 pm" and "14:00 pm" contradict themselves.
        if ((!namesHalf && !match.Groups["minute"].Success) || (namesHalf && hour is < 1 or > 12) || minute > 59 || second > 59)
            return Expected;
        hour = namesHalf ? (hour % 12) + (half is "p" or "P" ? 12 : 0) : hour;
        return hour <= 23 ? new LocalTime(hour, minute, second) : Expected;
    }

    private static int Number(Group group) => group.Success ? int.Parse(group.Value, CultureInfo.InvariantCulture) : 0;

    [GeneratedRegex(
        @"^(?<hour>[0-9]{1,2})(?:[:.hH](?<minute>[0-9]{2})(?::(?<second>[0-9]{2}))?)?(?:\s*(?<half>[aApP])\.?\s?[mM]\.?)?\z",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Parts();

    [GeneratedRegex(@"^0[.,][0-9]{3,}\z", RegexOptions.CultureInvariant)]
    private static partial Regex DayFraction();
}
