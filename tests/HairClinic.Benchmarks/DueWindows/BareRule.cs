using NodaTime;

namespace HairClinic.Benchmarks.DueWindows;

/// <summary>The least a due date can cost: two ends of a window, a target, and the next day the salon is open.</summary>
internal static class BareRule
{
    public static (LocalDate Opens, LocalDate Closes, LocalDate DueOn) WindowFor(
        LocalDate appliedOn,
        int earliestWeeks,
        int latestWeeks,
        int targetDays
    )
    {
        var due = appliedOn.PlusDays(targetDays);
        while (due.DayOfWeek is IsoDayOfWeek.Sunday or IsoDayOfWeek.Monday)
            due = due.PlusDays(1);
        return (appliedOn.PlusWeeks(earliestWeeks), appliedOn.PlusWeeks(latestWeeks), due);
    }
}
