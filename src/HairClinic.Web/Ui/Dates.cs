using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;
using NodaTime.Text;

namespace HairClinic.Web.Ui;

/// <summary>
/// Days and times as the reader writes them: the order and the names are the reader's culture's, the day itself is the salon's.
/// The year is left out while it is the same as today's.
/// </summary>
public static partial class Dates
{
    // Making a pattern costs far more than writing a day with it.
    private static readonly ConcurrentDictionary<(string Culture, bool WithYear), LocalDatePattern> DayPatterns = new();
    private static readonly ConcurrentDictionary<string, LocalTimePattern> TimePatterns = new();

    /// <summary>"Thu 3 Dec", or "Thu 3 Dec 2027" when the year is another than today's or today is not given.</summary>
    public static string Day(LocalDate date, LocalDate? today = null, CultureInfo? culture = null)
    {
        culture ??= CultureInfo.CurrentCulture;
        return DayPatterns
            .GetOrAdd((culture.Name, today?.Year != date.Year), static (key, culture) => PatternOf(key.WithYear, culture), culture)
            .Format(date);
    }

    /// <summary>A point in time as the salon's own day and clock: "Thu 3 Dec, 14:30".</summary>
    public static string Moment(Instant instant, DateTimeZone zone, LocalDate? today = null, CultureInfo? culture = null)
    {
        var local = instant.InZone(zone).LocalDateTime;
        return $"{Day(local.Date, today, culture)}, {Time(local.TimeOfDay, culture)}";
    }

    public static string Time(LocalTime time, CultureInfo? culture = null)
    {
        culture ??= CultureInfo.CurrentCulture;
        return TimePatterns
            .GetOrAdd(
                culture.Name,
                static (_, culture) => LocalTimePattern.Create(culture.DateTimeFormat.ShortTimePattern, culture),
                culture
            )
            .Format(time);
    }

    /// <summary>Minutes since the salon's midnight; 1440 is the midnight at the day's end.</summary>
    public static string Time(int minuteOfDay, CultureInfo? culture = null) => Time(LocalTime.Midnight.PlusMinutes(minuteOfDay), culture);

    /// <summary>"today", "in 3 days", "2 days ago".</summary>
    public static string Relative(LocalDate date, LocalDate today, IStringLocalizer words) =>
        Period.DaysBetween(today, date) switch
        {
            0 => words["today"],
            1 => words["tomorrow"],
            -1 => words["yesterday"],
            > 0 and var days => words["in {0} days", days],
            var days => words["{0} days ago", -days],
        };

    [return: NotNullIfNotNull(nameof(date))]
    public static string? Iso(LocalDate? date) => date is { } day ? LocalDatePattern.Iso.Format(day) : null;

    public static string? Iso(LocalTime? time) => time is { } clock ? clock.ToString("HH:mm", CultureInfo.InvariantCulture) : null;

    public static bool TryParseIso(string text, out LocalDate date) => LocalDatePattern.Iso.Parse(text).TryGetValue(default, out date);

    /// <summary>Browsers send "14:30", and "14:30:15" where the step allows seconds.</summary>
    public static bool TryParseIsoTime(string text, out LocalTime time) =>
        LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(text).TryGetValue(default, out time)
        || LocalTimePattern.ExtendedIso.Parse(text).TryGetValue(default, out time);

    private static LocalDatePattern PatternOf(bool withYear, CultureInfo culture) =>
        LocalDatePattern.Create(
            "ddd " + Shorten(withYear ? WithoutWeekday(culture.DateTimeFormat.LongDatePattern) : culture.DateTimeFormat.MonthDayPattern),
            culture
        );

    private static string Shorten(string pattern) => pattern.Replace("MMMM", "MMM", StringComparison.Ordinal);

    private static string WithoutWeekday(string pattern) => Weekday().Replace(pattern, "").Trim();

    [GeneratedRegex(@"\s*[,،]?\s*dddd\s*[,،.]?\s*")]
    private static partial Regex Weekday();
}
