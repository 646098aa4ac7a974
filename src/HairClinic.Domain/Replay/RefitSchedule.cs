namespace HairClinic.Domain.Replay;

/// <summary>The days on which a replay of a practice's past learns anew: each time from what was written down by then, and nothing later.</summary>
public static class RefitSchedule
{
    /// <summary>More would take a night for little.</summary>
    public const int Most = 24;

    /// <summary>Months from one to the next: one, or a quarter, or as many quarters as keep within <see cref="Most"/>.</summary>
    public static int MonthsBetween(LocalDate first, LocalDate last)
    {
        var months = Period.Between(first, last, PeriodUnits.Months).Months;
        return months <= Most ? 1 : 3 * (int)Math.Ceiling(months / 3.0 / Most);
    }

    /// <summary>The last days of months, evenly apart: what is known at the end of each is what it learns from.</summary>
    /// <param name="first">Of the records.</param>
    /// <param name="last">Nothing is learnt on or after it: nothing is predicted from it.</param>
    public static IReadOnlyList<LocalDate> Days(LocalDate first, LocalDate last)
    {
        var (step, days) = (MonthsBetween(first, last), new List<LocalDate>());
        var start = new LocalDate(first.Year, first.Month, 1);
        for (var months = step; start.PlusMonths(months).PlusDays(-1) is var day && day < last; months += step)
            days.Add(day);
        return days;
    }

    /// <summary>Which of them a prediction on a day stands on: the last before it; −1 where none is, and the practice's rows stand alone.</summary>
    public static int Before(IReadOnlyList<LocalDate> days, LocalDate day)
    {
        var at = -1;
        while (at + 1 < days.Count && days[at + 1] < day)
            at++;
        return at;
    }
}
