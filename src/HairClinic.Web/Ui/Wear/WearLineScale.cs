namespace HairClinic.Web.Ui.Wear;

/// <summary>Days to per cent of the picture's width. Per cent, so that lettering keeps its size on any screen.</summary>
public sealed class WearLineScale(LocalDate from, LocalDate to)
{
    private readonly int _days = Math.Max(1, Period.DaysBetween(from, to));

    public double PercentAt(LocalDate date) => Math.Clamp(100.0 * Period.DaysBetween(from, date) / _days, 0, 100);

    public string X(LocalDate date) => Percent(PercentAt(date));

    public string Width(LocalDate start, LocalDate end) => Percent(Math.Max(0, PercentAt(end) - PercentAt(start)));

    /// <summary>Lettering turns to the left of its point in the right half, so that it never leaves the picture.</summary>
    public string Anchor(LocalDate date) => PercentAt(date) > 60 ? "end" : "start";

    public string LabelOffset(LocalDate date) => PercentAt(date) > 60 ? "-5" : "5";

    /// <summary>First days of months for labels: at most twelve; all but every third (or so) are marked minor and dropped on a phone.</summary>
    public IReadOnlyList<(LocalDate On, bool Minor)> Months()
    {
        var first = from.Day == 1 ? from : new LocalDate(from.Year, from.Month, 1).PlusMonths(1);
        var all = Enumerable.Range(0, 600).Select(first.PlusMonths).TakeWhile(month => month < to).ToList();
        var step = (all.Count + 11) / 12;
        var shown = all.Where((_, index) => index % Math.Max(1, step) == 0 && PercentAt(all[index]) < 95).ToList();
        var major = (shown.Count + 3) / 4;
        return [.. shown.Select((month, index) => (month, index % Math.Max(1, major) != 0))];
    }

    private static string Percent(double value) => value.ToString("0.##", CultureInfo.InvariantCulture) + "%";
}
