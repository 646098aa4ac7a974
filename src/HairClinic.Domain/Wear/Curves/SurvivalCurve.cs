namespace HairClinic.Domain.Wear.Curves;

/// <summary>Kaplan and Meier's estimate of how many go on, from exact and right-censored spells, weighted.</summary>
/// <remarks>
/// Whatever stopped being watched at the time of an end was still at risk then. Variance is Greenwood's, with weights
/// read as counts. Times are equal only when they are the same number.
/// </remarks>
public sealed class SurvivalCurve
{
    // 97.5 % point of the normal distribution.
    private const double Z = ZScores.NinetyFivePercent;
    private readonly CurveStep[] _steps;

    private SurvivalCurve(CurveStep[] steps, int count, double lastTime) => (_steps, Count, LastTime) = (steps, count, lastTime);

    public IReadOnlyList<CurveStep> Steps => _steps;

    /// <summary>How many spells are behind it.</summary>
    public int Count { get; }

    /// <summary>The longest time anything was watched.</summary>
    public double LastTime { get; }

    /// <summary>Whether a curve can be drawn this way: every end is known or lies ahead.</summary>
    public static bool CanEstimate(ReadOnlySpan<Spell> spells)
    {
        foreach (var spell in spells)
        {
            if (spell.End is SpellEnd.By or SpellEnd.Between)
                return false;
        }
        return true;
    }

    /// <exception cref="ArgumentException">An end is known only to lie in an interval; see <see cref="TurnbullCurve"/>.</exception>
    public static SurvivalCurve Estimate(ReadOnlySpan<Spell> spells)
    {
        if (!CanEstimate(spells))
            throw new ArgumentException("Ends known only within an interval need the other estimate.", nameof(spells));
        var sorted = spells.ToArray();
        Array.Sort(sorted, static (a, b) => a.Lower.CompareTo(b.Lower));
        var atRisk = 0.0;
        foreach (var spell in sorted)
            atRisk += spell.Weight;
        var steps = new List<CurveStep>();
        var (survival, greenwood) = (1.0, 0.0);
        for (int first = 0, next; first < sorted.Length; first = next)
        {
            var (events, leaving) = (0.0, 0.0);
            for (next = first; next < sorted.Length && sorted[next].Lower == sorted[first].Lower; next++)
            {
                leaving += sorted[next].Weight;
                if (sorted[next].End == SpellEnd.At)
                    events += sorted[next].Weight;
            }
            if (events > 0)
            {
                // Nothing left behind it: rounding of summed weights must not leave a sliver.
                var gone = next == sorted.Length && leaving == events;
                survival = gone ? 0 : survival * (1 - events / atRisk);
                greenwood += events / (atRisk * (atRisk - events));
                steps.Add(Step(sorted[first].Lower, atRisk, events, survival, greenwood));
            }
            atRisk -= leaving;
        }
        return new SurvivalCurve([.. steps], sorted.Length, sorted.Length == 0 ? 0 : sorted[^1].Lower);
    }

    /// <summary>The share that goes on after a time.</summary>
    public double Survival(double time)
    {
        var (low, high) = (0, _steps.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _steps[middle].Time <= time ? (middle + 1, high) : (low, middle);
        }
        return low == 0 ? 1 : _steps[low - 1].Survival;
    }

    /// <summary>The time by which a share had ended; where the curve runs level at just that height, the middle of the level.</summary>
    /// <param name="probability">Strictly between 0 and 1.</param>
    public CurveQuantile Quantile(double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), "A quantile needs 0 < p < 1.");
        return new(
            probability,
            Crossing(1 - probability, static step => step.Survival),
            Crossing(1 - probability, static step => step.Lower),
            Crossing(1 - probability, static step => step.Upper)
        );
    }

    private double? Crossing(double height, Func<CurveStep, double> line)
    {
        const double Tolerance = 1.5e-8;
        for (var i = 0; i < _steps.Length; i++)
        {
            var value = line(_steps[i]);
            if (double.IsNaN(value) || value > height + Tolerance)
                continue;
            if (value < height - Tolerance)
                return _steps[i].Time;
            for (var next = i + 1; next < _steps.Length; next++)
            {
                if (line(_steps[next]) < height - Tolerance)
                    return (_steps[i].Time + _steps[next].Time) / 2;
            }
            return (_steps[i].Time + LastTime) / 2;
        }
        return null;
    }

    private static CurveStep Step(double time, double atRisk, double events, double survival, double greenwood)
    {
        if (survival <= 0)
            return new(time, atRisk, events, 0, double.NaN, double.NaN, double.NaN);
        var log = Math.Log(survival);
        var reach = Z * Math.Sqrt(greenwood) / log;
        return new(
            time,
            atRisk,
            events,
            survival,
            survival * Math.Sqrt(greenwood),
            Math.Exp(log * Math.Exp(-reach)),
            Math.Exp(log * Math.Exp(reach))
        );
    }
}

/// <summary>The time by which a share had ended, with its 95 % limits; null where the curve does not come down that far.</summary>
public readonly record struct CurveQuantile(double Probability, double? Time, double? Lower, double? Upper);

/// <summary>One step down of a survival curve, at a time on which something ended.</summary>
/// <param name="AtRisk">Weight of what was going on just before.</param>
/// <param name="Events">Weight of what ended.</param>
/// <param name="Survival">The share that goes on after this time.</param>
/// <param name="StdError">Greenwood's, of the survival; not a number where nothing goes on.</param>
/// <param name="Lower">95 % limit by the log(−log) transformation; not a number where nothing goes on.</param>
/// <param name="Upper">As <paramref name="Lower"/>.</param>
public readonly record struct CurveStep(
    double Time,
    double AtRisk,
    double Events,
    double Survival,
    double StdError,
    double Lower,
    double Upper
);

/// <summary>How many standard deviations to either side of the mean hold a share of a normal distribution.</summary>
public static class ZScores
{
    public const double EightyPercent = 1.2815515655446004;
    public const double NinetyFivePercent = 1.959963984540054;
}
