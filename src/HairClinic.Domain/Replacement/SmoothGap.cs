using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Replacement;

/// <summary>One unit, none in flight, no remake and no closure: the smooth case, by quadrature. It checks the daily grid.</summary>
public sealed class SmoothGap(SmoothLife life, SmoothLead lead, double preparationDays)
{
    private const int FarthestDays = 36_500;

    /// <summary>The chance that the hair is worn out before a unit ordered in so many days is ready.</summary>
    public double IfOrderedIn(double days) => lead.Mean(l => life.EndedWithin(days + l + preparationDays));

    /// <summary>The largest whole number of days an order can wait; null where today is too late already.</summary>
    public int? ReorderInDays(double alpha)
    {
        if (IfOrderedIn(0) > alpha)
            return null;
        var (low, high) = (0, 1);
        while (high < FarthestDays && IfOrderedIn(high) <= alpha)
            (low, high) = (high, 2 * high);
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            (low, high) = IfOrderedIn(middle) <= alpha ? (middle, high) : (low, middle);
        }
        return low;
    }

    /// <summary>Expected days of a gap within a horizon, for an order made today.</summary>
    public double ExpectedDaysWithoutHair(double horizonDays)
    {
        var soon = Math.Min(preparationDays, horizonDays);
        var sum = Panels(0, soon, life.EndedWithin);
        return sum + Panels(soon, horizonDays, u => life.EndedWithin(u) * lead.Later(u - preparationDays));
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
