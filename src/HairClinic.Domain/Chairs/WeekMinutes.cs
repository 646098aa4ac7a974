namespace HairClinic.Domain.Chairs;

/// <summary>How many minutes there are in each of the weeks ahead.</summary>
public static class WeekMinutes
{
    /// <summary>Minutes the hours hold in each week of seven days; a night on which the clocks change counts as it is.</summary>
    /// <param name="from">The first day of the first week.</param>
    public static double[] OpenMinutes(OpeningHours hours, LocalDate from, int weeks)
    {
        var minutes = new double[weeks];
        for (var day = 0; day < 7 * weeks; day++)
            minutes[day / 7] += hours.On(from.PlusDays(day)).Sum(stretch => stretch.Duration.TotalMinutes);
        return minutes;
    }
}
