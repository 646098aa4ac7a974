using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Replacement;

/// <summary>An integral cut where the integrand turns: sixteen of Gauss's points between any two cuts.</summary>
internal static class PanelQuadrature
{
    private static readonly GaussLegendreRule Rule = new(-1, 1, 16);

    /// <param name="cuts">In any order; those outside, and those that are no number, are left out.</param>
    public static double Sum(IEnumerable<double> cuts, double from, double to, Func<double, double> f)
    {
        var edges = cuts.Where(cut => cut > from && cut < to).Append(from).Append(to).ToArray();
        Array.Sort(edges);
        var sum = 0.0;
        for (var i = 1; i < edges.Length; i++)
            sum += Panel(edges[i - 1], edges[i], f);
        return sum;
    }

    public static double Panel(double from, double to, Func<double, double> f)
    {
        if (!(to > from))
            return 0;
        var (middle, half, sum) = (from + (to - from) / 2, (to - from) / 2, 0.0);
        for (var i = 0; i < Rule.Order; i++)
            sum += Rule.GetWeight(i) * f(middle + half * Rule.GetAbscissa(i));
        return half * sum;
    }
}
