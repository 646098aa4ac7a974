namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>How long something takes, in whole minutes: as a number, or as hours and minutes the way people write them.</summary>
public static partial class MinutesCellParser
{
    public static CellParseResult<int> Parse(string text, DecimalMark mark, decimal least, decimal most)
    {
        if (InHours().Match(text) is not { Success: true } match)
            return InMinutes().Match(text) is { Success: true } minutes
                    ? Within(int.Parse(minutes.Groups["minutes"].Value, CultureInfo.InvariantCulture), least, most)
                : NumberCellParser.Parse(text, mark).Expected is null ? NumberCellParser.ParseWhole(text, mark, least, most)
                : new Sentence("minutes such as 90, or hours and minutes such as 1h30");
        return Within(60 * Number("hours") + Number("minutes"), least, most);

        int Number(string group) =>
            match.Groups[group] is { Success: true, Value: { Length: > 0 } digits } ? int.Parse(digits, CultureInfo.InvariantCulture) : 0;
    }

    private static CellParseResult<int> Within(int minutes, decimal least, decimal most) =>
        minutes >= least && minutes <= most ? minutes : new Sentence("a number from {0} to {1}", least, most);

    // 1h30, 1 h 30 min, 2 hours, 1:30
    [GeneratedRegex(
        @"^(?<hours>[0-9]{1,3})(?:\s*:\s*(?<minutes>[0-5][0-9])|\s*(?:h|hr|hrs|hours?|horas?)\.?\s*(?:(?<minutes>[0-5]?[0-9])\s*(?:m|min|mins|minutes?|minutos?)?\.?)?)\z",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase
    )]
    private static partial Regex InHours();

    // 90 min
    [GeneratedRegex(
        @"^(?<minutes>[0-9]{1,6})\s*(?:m|min|mins|minutes?|minutos?)\.?\z",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase
    )]
    private static partial Regex InMinutes();
}
