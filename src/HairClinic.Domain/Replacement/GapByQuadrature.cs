using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Replacement;

/// <summary>One unit, none in flight, no remake and no closure: the smooth case, by quadrature. It checks the daily grid.</summary>
public sealed class GapByQuadrature(AgedWeibullLife life, ContinuousLeadTime lead, double preparationDays)
{
    private const int FarthestDays = 36_500;

    /// <summary>The chance that the hair is worn out before a unit ordered in so many days is ready.</summary>
    public double GapChanceIfOrderedIn(double days) => lead.ExpectationOf(l => life.ChanceEndsWithin(days + l + preparationDays));

    /// <summary>The largest whole number of days an order can wait; null where today is too late already.</summary>
    public int? ReorderInDays(double alpha)
    {
        if (GapChanceIfOrderedIn(0) > alpha)
            return null;
        var (low, high) = (0, 1);
        while (high < FarthestDays && GapChanceIfOrderedIn(high) <= alpha)
            (low, high) = (high, 2 * high);
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
        var soon = Math.Min(preparationDays, horizonDays);
        var sum = Panels(0, soon, life.ChanceEndsWithin);
        return sum + Panels(soon, horizonDays, u => life.ChanceEndsWithin(u) * lead.Survival(u - preparationDays));
    }

    private static double Panels(double from, double to, Func<double, double> f)
    {
        var count = (int)Math.Clamp((to - from) / 4, 16, 20_000);
        var sum = 0.0;
        for (var i = 0; i < count && to > from; i++)
            sum += GaussLegendreRule.Integrate(f, from + (to - from) * i / count, from + (to - from) * (i + 1) / count, 16);
        return sum;
    }
}

/// <summary>A lead time exp(m + s·Z) with Z normal, or Student's t with some degrees of freedom.</summary>
public readonly record struct ContinuousLeadTime(double MeanLog, double SpreadLog, double? DegreesOfFreedom)
{
    /// <summary>P(Λ &gt; days).</summary>
    public double Survival(double days)
    {
        if (days <= 0)
            return 1;
        var z = (Math.Log(days) - MeanLog) / SpreadLog;
        return DegreesOfFreedom is { } freedom ? StudentT.CDF(0, 1, freedom, -z) : NormalTail.Q(z);
    }

    /// <summary>E[f(Λ)] for a bounded, smooth f, by the trapezoid rule where the tails fall off exponentially or faster.</summary>
    public double ExpectationOf(Func<double, double> f)
    {
        const double Step = 0.005;
        // With z = sinh v a t density falls like e^(−df·v); the normal one is gone by z = 9.
        var reach = DegreesOfFreedom is { } freedom ? Math.Min(700, 3 + 40 / Math.Min(freedom, 40)) : Math.Asinh(9);
        var (sum, total) = (0.0, 0.0);
        for (var v = -reach; v <= reach; v += Step)
        {
            var z = Math.Sinh(v);
            var weight = Density(z) * Math.Cosh(v);
            total += weight;
            sum += weight * f(Math.Exp(MeanLog + SpreadLog * z));
        }
        return sum / total;
    }

    private double Density(double z) =>
        DegreesOfFreedom is { } freedom ? Math.Exp(-(freedom + 1) / 2 * SpecialFunctions.Log1p(z * z / freedom)) : Math.Exp(-z * z / 2);
}

/// <summary>A Weibull life that has lasted so long already.</summary>
/// <param name="Shape">1/σ.</param>
/// <param name="ScaleDays">The characteristic life.</param>
/// <param name="AgeDays">Worn days until today.</param>
public readonly record struct AgedWeibullLife(double Shape, double ScaleDays, double AgeDays)
{
    /// <summary>The chance that it is worn out within that many further worn days.</summary>
    public double ChanceEndsWithin(double days)
    {
        if (days <= 0)
            return 0;
        var worn = Math.Pow(AgeDays / ScaleDays, Shape);
        // So far past any life that the powers overflow.
        return double.IsInfinity(worn) ? 1 : -Expm1(worn - Math.Pow((AgeDays + days) / ScaleDays, Shape));
    }

    // exp(x) − 1 for x ≤ 0, true for small x too.
    private static double Expm1(double x)
    {
        var half = Math.Tanh(x / 2);
        return x < -30 ? -1 : 2 * half / (1 - half);
    }
}
