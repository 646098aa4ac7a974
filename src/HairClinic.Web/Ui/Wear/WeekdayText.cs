namespace HairClinic.Web.Ui.Wear;

/// <summary>Weekdays by the reader's own names.</summary>
public static class WeekdayText
{
    public static IReadOnlyList<IsoDayOfWeek> Week { get; } =
    [.. Enumerable.Range((int)IsoDayOfWeek.Monday, 7).Select(day => (IsoDayOfWeek)day)];

    public static string Name(IsoDayOfWeek day) =>
        CultureInfo.CurrentCulture.DateTimeFormat.GetAbbreviatedDayName((DayOfWeek)((int)day % 7));

    /// <summary>“Tue, Thu”; empty when any day will do.</summary>
    public static string Name(WeekdaySet days) => string.Join(", ", Week.Where(days.Contains).Select(Name));
}
