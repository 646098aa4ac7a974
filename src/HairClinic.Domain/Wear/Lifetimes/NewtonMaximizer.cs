namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Newton's method uphill: steps that do not climb are halved, and bends the wrong way are straightened by a ridge.</summary>
/// <remarks>
/// It has arrived only when the next step is short both in standard errors and in units of the noise. A likelihood that
/// rises for ever, ever more gently (separation), makes steps of one unit of the noise without end and never arrives.
/// </remarks>
/// <param name="stride">1 for all rows; n to climb on a sample of one block of rows in n.</param>
internal sealed class NewtonMaximizer(LogPosterior target, double[] spreads, int stride = 1)
{
    private const int Longest = 200;
    private const double ShortInErrors = 1e-9;
    private const double ShortInNoise = 1e-3;

    // So near the top that Newton's step needs no watching: an integral over nodes is known to about so much.
    private const double Near = 1e-6;

    // With clients' effects far too small a scale is a slope without a top near by: not to be leapt to.
    private double LongestOfScale => target.IsMarginal ? 0.4 : 1;

    public double[] Parameters { get; private set; } = [];
    public LogLikelihoodSums Sums { get; private set; } = new(0);
    public int Iterations { get; private set; }
    public bool Converged { get; private set; }

    /// <summary>The parameter that moved most in the last step, in units of the noise.</summary>
    public int Mover { get; private set; }

    public void MaximizeFrom(double[] start)
    {
        Parameters = start;
        Sums = target.EvaluateWithPriors(start, stride);
        while (!Converged && Iterations++ < Longest && Sums.IsFinite)
        {
            if (Factor(out var ridged) is not { } factor)
                return;
            var step = factor.Solve(Sums.Gradient);
            var rise = 0.0;
            for (var j = 0; j < step.Length; j++)
                rise += step[j] * Sums.Gradient[j];
            var inNoise = InNoise(step);
            // A scale is not changed more than e-fold at once, nor a centre by more than some widths of the noise.
            var share = Math.Min(1, 4 / Math.Max(inNoise, 4 * Math.Abs(step[^1]) / LongestOfScale));
            var arrived = !ridged && rise < ShortInErrors && inNoise < ShortInNoise;
            if (!TryStep(step, share, rise) && !arrived)
                return;
            if (Parameters[^1] < target.LowestLogScale)
            {
                Mover = Parameters.Length - 1;
                return;
            }
            Converged = arrived;
        }
    }

    private bool TryStep(double[] step, double share, double rise)
    {
        // What the sums' own rounding may hide is no fall; nor, near the top, what the clients' nodes leave value and slope apart.
        var slack = rise < Near ? Near : 1e-13 * Math.Abs(Sums.Value);
        for (var halving = 0; halving < 50; halving++, share /= 2)
        {
            var next = new double[step.Length];
            for (var j = 0; j < next.Length; j++)
                next[j] = Parameters[j] + share * step[j];
            var sums = target.EvaluateWithPriors(next, stride);
            if (!sums.IsFinite || sums.Value < Sums.Value + 1e-4 * share * rise - slack)
                continue;
            (Parameters, Sums) = (next, sums);
            return true;
        }
        return false;
    }

    private ScaledCholesky? Factor(out bool ridged)
    {
        var bend = Array.ConvertAll(Sums.Hessian, static h => -h);
        ridged = false;
        if (ScaledCholesky.TryFactorize(bend, Sums.Size, 0, out _) is { SmallestPivot: > 1e-11 } plain)
            return plain;
        ridged = true;
        for (var ridge = 1e-3; ridge < 1e6; ridge *= 10)
        {
            if (ScaledCholesky.TryFactorize(bend, Sums.Size, ridge, out _) is { } factor)
                return factor;
        }
        return null;
    }

    private double InNoise(double[] step)
    {
        var scale = Math.Exp(Parameters[^1]);
        var largest = Math.Abs(step[^1]);
        Mover = step.Length - 1;
        for (var j = 0; j < step.Length - 1; j++)
        {
            if (Math.Abs(step[j]) * spreads[j] / scale > largest)
                (largest, Mover) = (Math.Abs(step[j]) * spreads[j] / scale, j);
        }
        return largest;
    }
}
