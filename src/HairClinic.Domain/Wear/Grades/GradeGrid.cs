using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>The places of x = ln T at which a window's grades are weighed, and what the window assumes of x there.</summary>
internal sealed class GradeGrid
{
    public const double Step = 0.025;

    // In ln T, to both sides of the window's centre: far more than covariates and clients move it by, and more than early ends reach.
    private const double Below = 1.9;
    private const double Above = 1.4;

    public GradeGrid(WindowPrior window)
    {
        Window = window;
        Start = window.Centre - Math.Max(Below, 2.5 * window.Width);
        Count = (int)Math.Ceiling((window.Centre + Math.Max(Above, 1.85 * window.Width) - Start) / Step) + 1;
        PriorShares = new double[Count];
        for (var i = 0; i < Count; i++)
            PriorShares[i] = PriorDensity(window, Start + i * Step);
        var total = PriorShares.Sum();
        for (var i = 0; i < Count; i++)
            PriorShares[i] /= total;
    }

    public WindowPrior Window { get; }

    public double Start { get; }

    public int Count { get; }

    public double End => Start + (Count - 1) * Step;

    /// <summary>The window's own distribution of ln T for a client of whom nothing is known; they add up to 1.</summary>
    public double[] PriorShares { get; }

    private static double PriorDensity(WindowPrior window, double x)
    {
        var spread = Math.Sqrt(window.ClientSpread * window.ClientSpread + window.PracticeSpread * window.PracticeSpread);
        if (window.Distribution == LifeDistribution.LogNormal)
            return NormalTail.Density((x - window.Centre) / Math.Sqrt(window.Sigma * window.Sigma + spread * spread));
        var sum = 0.0;
        for (var k = 0; k < GradeNodes.Effect.Nodes.Length; k++)
        {
            var z = (x - window.Centre - spread * GradeNodes.Effect.Nodes[k]) / window.Sigma;
            sum += GradeNodes.Effect.Shares[k] * Math.Exp(z - Math.Exp(z));
        }
        return sum;
    }
}

/// <summary>Gauss's rules that the grades' integrals are taken with.</summary>
internal static class GradeNodes
{
    /// <summary>Over v, how unevenly a unit wears.</summary>
    public static (double[] Nodes, double[] Shares) Uneven { get; } = StandardNormal(5);

    /// <summary>Over people and practice, in a window's prior.</summary>
    public static (double[] Nodes, double[] Shares) Effect { get; } = StandardNormal(31);

    /// <summary>Over one panel, from 0 to 1.</summary>
    public static (double[] Nodes, double[] Shares) Panel { get; } = Legendre(5);

    private static (double[], double[]) StandardNormal(int count) =>
        GaussQuadrature.FromTridiagonal(new double[count], [.. Enumerable.Range(1, count - 1).Select(k => Math.Sqrt(k))]);

    private static (double[], double[]) Legendre(int count)
    {
        var (nodes, shares) = GaussQuadrature.FromTridiagonal(
            new double[count],
            [.. Enumerable.Range(1, count - 1).Select(k => k / Math.Sqrt(4.0 * k * k - 1))]
        );
        return (Array.ConvertAll(nodes, node => (1 + node) / 2), shares);
    }
}
