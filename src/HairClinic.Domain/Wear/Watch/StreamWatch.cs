namespace HairClinic.Domain.Wear.Watch;

/// <summary>The watch of one stream in delivery order, as of a day: has it got worse, and from which unit on?</summary>
public static class StreamWatch
{
    /// <summary>Above it there is an alarm, in a practice of some 160 units a year: one false alarm in ten practice-years at most.</summary>
    public const double Limit = 4.9;

    /// <summary>How far back a decline is looked for; what was delivered before is what is usual.</summary>
    public const int WatchedDays = 365;

    // At the limit, units there are to one false alarm over e^limit: simulated 16, taken as 12.
    private const double Overshoot = 12;
    private const double YearsToFalseAlarm = 10;

    /// <summary>The more units there are, the more chances of a false alarm: the limit rises with their logarithm.</summary>
    /// <param name="unitsPerYear">Of all streams that are watched alike: of a practice's workshops together, or of its adhesives.</param>
    public static double LimitFor(double unitsPerYear) =>
        Math.Max(Limit, Math.Log(Math.Max(1, unitsPerYear) * YearsToFalseAlarm / Overshoot));

    /// <param name="increments">For each unit in delivery order what it adds (<see cref="ShiftScan"/>): above 0 where it speaks for a decline.</param>
    /// <remarks>
    /// The most that the sum from a unit to the last may be is where a CUSUM of the increments ends; the unit is the one after its last 0.
    /// Units go on telling, so all of it is done again each night; where that CUSUM stood at an earlier unit is no news of that day,
    /// since its increments take all later units as worse.
    /// </remarks>
    public static StreamState Evaluate(ReadOnlySpan<double> increments)
    {
        var profile = new double[increments.Length];
        var sum = 0.0;
        for (var i = increments.Length - 1; i >= 0; i--)
            profile[i] = sum += increments[i];
        var path = Array.ConvertAll(new Cusum(0, 0, double.PositiveInfinity).Path(increments), point => point.Upper);
        return path is [.., > 0] ? new StreamState(path[^1], Array.LastIndexOf(path, 0) + 1, profile) : new StreamState(0, null, profile);
    }
}

/// <summary>How a stream stands on a day.</summary>
/// <param name="Statistic">
/// The logarithm of how much likelier the records are if it got worse, at the place where that is most likely; 0 where no place speaks for it.
/// </param>
/// <param name="FirstOfCohort">That place in the stream, from 0: the cohort are the units from it on.</param>
/// <param name="Profile">The same logarithm for every place, in delivery order; the highest above 0 is the statistic.</param>
public sealed record StreamState(double Statistic, int? FirstOfCohort, IReadOnlyList<double> Profile)
{
    public bool IsAbove(double limit) => Statistic > limit;
}
