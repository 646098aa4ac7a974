using HairClinic.Web.Shell.Edits;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Settings;

/// <summary>The hours of one weekday as typed: none, one spell or two.</summary>
public sealed record WeekdayHoursInput : IFormRow
{
    public IsoDayOfWeek Day { get; set; }
    public LocalTime? From { get; set; }
    public LocalTime? To { get; set; }
    public LocalTime? SecondFrom { get; set; }
    public LocalTime? SecondTo { get; set; }

    public static List<WeekdayHoursInput> EmptyWeek() =>
        [.. Enumerable.Range(1, 7).Select(d => new WeekdayHoursInput { Day = (IsoDayOfWeek)d })];

    /// <summary>A week as it stands in the book. More than two spells a day never come from these screens.</summary>
    public static List<WeekdayHoursInput> WeekFromSpells(IEnumerable<(IsoDayOfWeek Day, LocalTime From, LocalTime To)> spells)
    {
        var week = EmptyWeek();
        foreach (var (day, from, to) in spells.OrderBy(s => s.From))
        {
            var hours = week[(int)day - 1];
            if (hours.From is null)
                (hours.From, hours.To) = (from, to);
            else
                (hours.SecondFrom, hours.SecondTo) = (from, to);
        }
        return week;
    }

    /// <summary>The spells that are complete.</summary>
    public IEnumerable<(LocalTime From, LocalTime To)> Spells()
    {
        if (From is { } from && To is { } to)
            yield return (from, to);
        if (SecondFrom is { } secondFrom && SecondTo is { } secondTo)
            yield return (secondFrom, secondTo);
    }

    object IFormRow.Key => Day;

    string IFormRow.Describe(FieldFormatter words)
    {
        var spells = new[] { (From, To), (SecondFrom, SecondTo) }.Where(s => s is not (null, null)).ToList();
        return $"{DayName(Day)} {(spells.Count == 0 ? words.Format(null) : string.Join(" + ", spells.Select(s => $"{Clock(s.Item1)}–{Clock(s.Item2)}")))}";
    }

    // What is half typed is said too.
    private static string Clock(LocalTime? time) => time is { } known ? Dates.Time(known) : "?";

    public static string DayName(IsoDayOfWeek day) => CultureInfo.CurrentCulture.DateTimeFormat.GetDayName((DayOfWeek)((int)day % 7));

    public static string Describe(IEnumerable<WeekdayHoursInput> week) =>
        string.Join(
            ", ",
            week.Where(d => d.Spells().Any())
                .Select(d =>
                    $"{DayName(d.Day)} {string.Join(" + ", d.Spells().Select(s => $"{s.From.ToString("HH:mm", null)}–{s.To.ToString("HH:mm", null)}"))}"
                )
        );
}
