namespace HairClinic.Domain.Replacement;

/// <summary>One unit, none in flight, no remake and no closure: the smooth case, by quadrature. It checks the daily grid.</summary>
/// <remarks>
/// Lives and lead times may be narrow or wide by many powers of ten, beside each other and beside the horizon. So the integrals run over
/// the lead time's noise z, and are cut wherever the life, the lead time or the logarithm of the days has moved on by a little.
/// </remarks>
public sealed class GapByQuadrature(AgedWeibullLife life, ContinuousLeadTime lead, double preparationDays)
{
    /// <summary>A hundred years: whether an order can wait longer is not looked at.</summary>
    public const int FarthestDays = 36_500;

    // Beyond e^5 of wear next to nothing lasts, below e^−45 next to nothing is worn out.
    private const double LogWearOfAll = 5;
    private const double LogOfNothing = -45;

    // The most by which the logarithm of the days moves from one cut to the next.
    private readonly double _step = Math.Clamp(8 / life.Shape, 0.02, 1);

    /// <summary>The chance that the hair is worn out before a unit ordered in so many days is ready.</summary>
    public double GapChanceIfOrderedIn(double days)
    {
        var waits = days + preparationDays;
        var last = LogDaysBeyond(waits, LogWearOfAll);
        var cuts = lead.NoiseCuts.Concat(
            LifeCuts(waits).Concat(Steps(last + LogOfNothing / Math.Min(1, life.Shape), last, _step)).Select(lead.NoiseAt)
        );
        var farthest = lead.NoiseCuts[^1];
        // Beyond the noise looked at the unit is here at once, or never.
        var ends = lead.Tail(farthest) * (life.ChanceEndsWithin(waits) + 1);
        var between = PanelQuadrature.Sum(
            cuts,
            -farthest,
            farthest,
            z => lead.Density(z) * life.ChanceEndsWithin(waits + Math.Exp(lead.LogDaysAt(z)))
        );
        return Math.Min(1, ends + between);
    }

    /// <summary>The largest whole number of days an order can wait; null where today is too late already.</summary>
    /// <returns><see cref="FarthestDays"/> where it can wait as long or longer.</returns>
    public int? ReorderInDays(double alpha)
    {
        if (GapChanceIfOrderedIn(0) > alpha)
            return null;
        var (low, high) = (0, 1);
        while (GapChanceIfOrderedIn(high) <= alpha)
        {
            if (high == FarthestDays)
                return FarthestDays;
            (low, high) = (high, Math.Min(2 * high, FarthestDays));
        }
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            (low, high) = GapChanceIfOrderedIn(middle) <= alpha ? (middle, high) : (low, middle);
        }
        return low;
    }

    /// <summary>Expected days of a gap within a horizon, for an order made today.</summary>
    public double ExpectedDaysWithoutHair(double horizonDays)
    {
        var soon = Math.Log(Math.Min(preparationDays, horizonDays));
        // What is left out is short, and the chance of being worn out is least there.
        var before = double.IsNegativeInfinity(soon)
            ? 0
            : PanelQuadrature.Sum(
                LifeCuts(0).Concat(Steps(soon + LogOfNothing, soon, _step)),
                soon + LogOfNothing,
                soon,
                y => life.ChanceEndsWithin(Math.Exp(y)) * Math.Exp(y)
            );
        if (horizonDays <= preparationDays)
            return before;
        var last = Math.Log(horizonDays - preparationDays);
        var first = Math.Min(last, lead.MeanLog) + LogOfNothing;
        var wornOut = Math.Clamp(LogDaysBeyond(preparationDays, LogWearOfAll), first, last);
        var cuts = lead.NoiseCuts.Concat(
            LifeCuts(preparationDays).Concat(Steps(first, wornOut, _step)).Concat(Steps(wornOut, last, 1)).Select(lead.NoiseAt)
        );
        return before
            + PanelQuadrature.Sum(
                cuts,
                lead.NoiseAt(first),
                lead.NoiseAt(last),
                z =>
                {
                    var days = Math.Exp(lead.LogDaysAt(z));
                    return life.ChanceEndsWithin(preparationDays + days) * lead.Tail(z) * days * lead.SpreadLog;
                }
            );
    }

    // ln of the days, beyond those waited, at which the life has moved on by one more in the logarithm of its wear.
    private IEnumerable<double> LifeCuts(double waits) =>
        Enumerable.Range((int)LogOfNothing, (int)(LogWearOfAll - LogOfNothing) + 1).Select(wear => LogDaysBeyond(waits, wear));

    // Minus infinity where it is so far before they are waited.
    private double LogDaysBeyond(double waits, double logWear) => Math.Log(Math.Max(0, life.DaysUntil(logWear) - waits));

    private static IEnumerable<double> Steps(double from, double to, double step)
    {
        for (var at = to; at > from; at -= step)
            yield return at;
    }
}
