using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Where a fit starts: least squares on ln T, an interval's at its middle, as if every spell ended where it was last seen.</summary>
internal sealed class FitStart
{
    private readonly double[] normal;
    private readonly double[] right;
    private readonly int size;

    private FitStart(int covariates)
    {
        size = covariates + 1;
        (normal, right) = (new double[size * size], new double[size]);
        Spreads = new double[size];
    }

    /// <summary>Root mean square of each column over the rows' σ: what turns a step into units of the noise.</summary>
    public double[] Spreads { get; }

    public double[] Parameters { get; private set; } = [];

    /// <summary>The covariate (from 1) that the others already tell, or that is the same on every row; 0 if none.</summary>
    public int Entangled { get; private set; }

    public static FitStart Of(LifeDistribution distribution, LifeRows rows, LogPosterior target)
    {
        var start = new FitStart(rows.Columns.Length);
        start.Gather(rows);
        var residual = start.Solve(rows, target);
        // ln T of a Weibull spreads 1.28 times its scale: 0.78 = √6/π.
        var logScale = residual > 1e-8 ? Math.Log(0.78 * residual) : -2;
        if (target.Prior(target.Size - 1) is { IsProper: true } prior)
            logScale = Math.Clamp(logScale, prior.Mean - 2 * prior.Spread, prior.Mean + 2 * prior.Spread);
        if (distribution == LifeDistribution.Weibull && rows.Places is null)
            start.Parameters[0] += 0.5772 * Math.Exp(logScale);
        start.Parameters = [.. start.Parameters, logScale];
        return start;
    }

    private static double Sigma(LifeRows rows, int row) => rows.Places is { } places ? places[row].Sigma : 1;

    private static double Away(LifeRows rows, int row)
    {
        var y = rows.Ends[row] switch
        {
            SpellEnd.By => rows.LogUpper[row],
            SpellEnd.Between => (rows.LogLower[row] + rows.LogUpper[row]) / 2,
            _ => rows.LogLower[row],
        };
        return rows.Places is { } places ? y - places[row].Offset : y;
    }

    private static double Design(LifeRows rows, int row, int column) =>
        column > 0 ? rows.Columns[column - 1][row]
        : rows.Places is { } places ? places[row].Loading
        : 1;

    private void Gather(LifeRows rows)
    {
        var total = 0.0;
        Span<double> design = size <= 64 ? stackalloc double[size] : new double[size];
        for (var i = 0; i < rows.Count; i++)
        {
            var weight = rows.Weights[i] / (Sigma(rows, i) * Sigma(rows, i));
            var y = Away(rows, i);
            total += rows.Weights[i];
            for (var j = 0; j < size; j++)
                design[j] = Design(rows, i, j);
            for (var j = 0; j < size; j++)
            {
                var weighted = weight * design[j];
                right[j] += weighted * y;
                for (var k = 0; k <= j; k++)
                    normal[j * size + k] += weighted * design[k];
            }
        }
        for (var j = 0; j < size; j++)
            Spreads[j] = Math.Sqrt(normal[j * size + j] / Math.Max(total, 1e-300));
    }

    private double Solve(LifeRows rows, LogPosterior target)
    {
        // What a column's mean left behind by rounding is no spread.
        for (var j = 1; j < size && Entangled == 0 && rows.Count > 0; j++)
        {
            if (Spreads[j] <= 1e-9 * (Math.Abs(rows.Means[j - 1]) + double.Epsilon) || Spreads[j] == 0)
                Entangled = j;
        }
        if (
            Entangled == 0
            && size > 1
            && rows.Count > 0
            && ScaledCholesky.Of(normal, size, 0, out var culprit) is var plain
            && plain is not { SmallestPivot: > 1e-10 }
        )
            Entangled = Math.Max(1, plain?.Weakest ?? culprit);
        for (var k = 0; k < size; k++)
        {
            for (var j = 0; j < size; j++)
            {
                right[j] += target.Prior(k).Precision * target.Turn(k, j) * target.Prior(k).Mean;
                for (var l = 0; l <= j; l++)
                    normal[j * size + l] += target.Prior(k).Precision * target.Turn(k, j) * target.Turn(k, l);
            }
        }
        Parameters =
            (ScaledCholesky.Of(normal, size, 0, out _) ?? ScaledCholesky.Of(normal, size, 1e-6, out _))?.Solve(right) ?? new double[size];
        var (squares, total) = (0.0, 0.0);
        for (var i = 0; i < rows.Count; i++)
        {
            var residual = Away(rows, i);
            for (var j = 0; j < size; j++)
                residual -= Parameters[j] * Design(rows, i, j);
            residual /= Sigma(rows, i);
            squares += rows.Weights[i] * residual * residual;
            total += rows.Weights[i];
        }
        return total > 0 ? Math.Sqrt(squares / total) : 0;
    }
}
