using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.LoadAhead;

/// <summary>Days from one rebond to the next: until it lifts or until the target, whichever is first.</summary>
public static class RebondIntervalCalculator
{
    /// <summary>Fills the chance of each day; the target takes what has not lifted before it.</summary>
    /// <param name="survival">The client's predictive hold by days (<see cref="LifePrediction.SurvivalByDay"/>), up to before the target at least.</param>
    /// <param name="targetDays">The target after snapping, days after application, at least 1.</param>
    /// <param name="ageDays">Days the bond has held already; 0 for a fresh one.</param>
    /// <param name="chances">By days from today; at least as long as what is left until the target, plus one.</param>
    /// <remarks>A lift is mended the day after it at the earliest: a fresh bond's own day has nothing on it.</remarks>
    public static void FillChances(ReadOnlySpan<double> survival, int targetDays, int ageDays, Span<double> chances)
    {
        chances.Clear();
        // Overdue and still sound: rebonded today.
        var left = targetDays - ageDays;
        if (left <= 0)
        {
            chances[0] = 1;
            return;
        }
        var before = 1.0;
        for (var day = 1; day < left; day++)
        {
            // A bond older than the curve allows is expected to lift at once.
            var after = survival[ageDays] > 0 ? survival[ageDays + day] / survival[ageDays] : 0;
            (chances[day], before) = (before - after, after);
        }
        chances[left] = before;
    }
}
