namespace HairClinic.Domain.Wear.Grades;

/// <summary>How likely a unit's grades are for each day, from today on, on which it may be worn out: what its remaining life is weighed with.</summary>
/// <remarks>
/// By Bayes' rule the chance of each day, as age and client have it, times this, over the sum of them all. Only ratios matter. Of a unit that
/// may be repaired the days are worn days: what a repair to come would add to its life is left out here.
/// </remarks>
public sealed class GradeWeights
{
    // Of a year or two nothing is left, and the curve stands still long before.
    private const int Longest = 4096;
    private readonly double[] _onDay;

    /// <param name="age">Worn days until today.</param>
    /// <exception cref="ArgumentOutOfRangeException">The age is below 0 or no number.</exception>
    public GradeWeights(GradeCurve curve, double age)
    {
        if (!(age >= 0) || !double.IsFinite(age))
            throw new ArgumentOutOfRangeException(nameof(age), "An age is 0 days or more.");
        var days = Math.Clamp((int)Math.Ceiling(Math.Exp(curve.Grid.End) - age), 0, Longest) + 1;
        _onDay = new double[days];
        for (var day = 0; day < days; day++)
            _onDay[day] = curve.At(Math.Log(age + day));
    }

    /// <summary>Of ends on that day, 0 for today; after the last that is told apart all are alike.</summary>
    public double OnDay(int day) => _onDay[Math.Min(day, _onDay.Length - 1)];

    /// <summary>
    /// Survival from today on, by day, weighed: what was S(d) on the days 0, 1, 2 … becomes the chance to last so long with these grades.
    /// </summary>
    /// <remarks>Each day's end is weighed with the mean of what its two edges say; what outlasts the days given, with what the last says.</remarks>
    public void Weigh(Span<double> survival)
    {
        if (survival.IsEmpty)
            return;
        var (later, plain) = (survival[^1] * OnDay(survival.Length - 1), survival[^1]);
        survival[^1] = later;
        for (var day = survival.Length - 2; day >= 0; day--)
        {
            later += (survival[day] - plain) * (OnDay(day) + OnDay(day + 1)) / 2;
            plain = survival[day];
            survival[day] = later;
        }
        var whole = survival[0];
        foreach (ref var chance in survival)
            chance /= whole;
    }
}
