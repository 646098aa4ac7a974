namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Where a fit starts: least squares on ln T, an interval's at its middle, as if every spell ended where it was last seen.</summary>
internal sealed class LifetimeFitStart
{
    private const double NoResidual = 1e-6;

    private LifetimeFitStart(LifetimeFitRows rows) => Spreads = new double[rows.Columns.Length + 1];

    /// <summary>Root mean square of each column over the rows' σ: what turns a step into units of the noise.</summary>
    public double[] Spreads { get; }

    public double[] Parameters { get; private set; } = [];

    /// <summary>The covariate (from 1) that follows from the others, or is the same on every row; 0 if none.</summary>
    public int Entangled { get; private set; }

    public static LifetimeFitStart Guess(LifeDistribution distribution, LifetimeFitRows rows, LogPosterior target)
    {
        var start = new LifetimeFitStart(rows);
        var plain = new PooledLikelihood(distribution, rows);
        var residual = start.Solve(rows, target, plain.LeastSquaresSums(target.IsLarge ? LogPosterior.SampleStride : 1));
        // All rows may tell apart what a sample cannot.
        if (target.IsLarge && start.Entangled > 0)
            residual = start.Solve(rows, target, plain.LeastSquaresSums(1));
        // ln T of a Weibull spreads 1.28 times its scale: 0.78 = √6/π.
        var logScale = residual > NoResidual ? Math.Log(0.78 * residual) : -2;
        if (target.PriorOf(target.Size - 1) is { IsProper: true } prior)
            logScale = target.IsMarginal ? prior.Mean : Math.Clamp(logScale, prior.Mean - 2 * prior.Spread, prior.Mean + 2 * prior.Spread);
        if (distribution == LifeDistribution.Weibull && rows.Places is null)
            start.Parameters[0] += 0.5772 * Math.Exp(logScale);
        start.Parameters = [.. start.Parameters, logScale];
        return start;
    }

    private double Solve(LifetimeFitRows rows, LogPosterior target, LogLikelihoodSums sums)
    {
        var size = Spreads.Length;
        var total = Math.Max(sums.Gradient[^1], 1e-300);
        var normal = new double[size * size];
        var right = sums.Gradient.AsSpan(0, size).ToArray();
        for (var j = 0; j < size; j++)
        {
            sums.Hessian.AsSpan(j * sums.Size, size).CopyTo(normal.AsSpan(j * size));
            Spreads[j] = Math.Sqrt(normal[j * size + j] / total);
        }
        Entangled = rows.Length > 0 ? FindEntangled(normal) : 0;
        var (plain, plainRight) = ((double[])normal.Clone(), (double[])right.Clone());
        for (var k = 0; k < size; k++)
        {
            for (var j = 0; j < size; j++)
            {
                right[j] += target.PriorOf(k).Precision * target.ReportedParameterDerivative(k, j) * target.PriorOf(k).Mean;
                for (var l = 0; l < size; l++)
                    normal[j * size + l] +=
                        target.PriorOf(k).Precision * target.ReportedParameterDerivative(k, j) * target.ReportedParameterDerivative(k, l);
            }
        }
        var factor = ScaledCholesky.TryFactorize(normal, size, 0, out _) ?? ScaledCholesky.TryFactorize(normal, size, 1e-6, out _);
        Parameters = factor?.Solve(right) ?? new double[size];
        // Σ (y − xᵀb)² from the sums: coarse where next to nothing is left, which is all a start needs to know.
        var squares = sums.Value;
        for (var j = 0; j < size; j++)
        {
            squares -= 2 * Parameters[j] * plainRight[j];
            for (var l = 0; l < size; l++)
                squares += Parameters[j] * Parameters[l] * plain[j * size + l];
        }
        return Math.Sqrt(Math.Max(0, squares) / total);
    }

    private int FindEntangled(double[] normal)
    {
        if (Array.IndexOf(Spreads, 0, 1) is var constant and > 0)
            return constant;
        if (
            Spreads.Length == 1
            || ScaledCholesky.TryFactorize(normal, Spreads.Length, 0, out var culprit) is var factor && factor is { SmallestPivot: > 1e-10 }
        )
            return 0;
        return Math.Max(1, factor?.Weakest ?? culprit);
    }
}
