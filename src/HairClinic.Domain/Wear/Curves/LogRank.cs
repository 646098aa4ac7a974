using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace HairClinic.Domain.Wear.Curves;

/// <summary>Whether groups last differently: the log-rank test, of any number of groups, within strata where given.</summary>
/// <remarks>Ties are counted as they come (hypergeometric variance). Weights are read as counts.</remarks>
public sealed class LogRank
{
    private LogRank(LogRankGroupResult[] groups, double chiSquare, int degrees, string? undefined)
    {
        (Groups, ChiSquare, DegreesOfFreedom, Undefined) = (groups, chiSquare, degrees, undefined);
        P = undefined is null ? SpecialFunctions.GammaUpperRegularized(degrees / 2.0, chiSquare / 2) : double.NaN;
    }

    /// <summary>Why there is no test; null where there is one.</summary>
    public string? Undefined { get; }

    public IReadOnlyList<LogRankGroupResult> Groups { get; }

    public double ChiSquare { get; }

    public int DegreesOfFreedom { get; }

    public double P { get; }

    /// <param name="groups">For each spell its group, from 0.</param>
    /// <param name="strata">For each spell its stratum, from 0; empty for one stratum.</param>
    public static LogRank Test(ReadOnlySpan<Spell> spells, ReadOnlySpan<int> groups, ReadOnlySpan<int> strata = default)
    {
        if (!SurvivalCurve.CanEstimate(spells))
            return Not("Some ends are known only within an interval: the log-rank test needs each end's time.");
        var (size, layers) = (0, 1);
        foreach (var group in groups)
            size = Math.Max(size, group + 1);
        foreach (var stratum in strata)
            layers = Math.Max(layers, stratum + 1);
        var sum = new LogRankSum(size);
        for (var layer = 0; layer < layers; layer++)
            sum.AddStratum(spells, groups, strata, layer);
        return sum.Groups is var found && sum.Compared is { Length: > 1 } compared
            ? Tested(found, sum, compared)
            : Not("There are no two groups in which something could have ended: nothing can be compared.");
    }

    private static LogRank Tested(LogRankGroupResult[] groups, LogRankSum sum, int[] compared)
    {
        // The differences add up to nothing, so the last group says no more than the others together.
        var free = compared[..^1];
        var differences = Vector<double>.Build.Dense(free.Length, i => groups[free[i]].Observed - groups[free[i]].Expected);
        var variance = Matrix<double>.Build.Dense(free.Length, free.Length, (i, j) => sum.Variance[free[i], free[j]]);
        try
        {
            var chiSquare = differences.DotProduct(variance.Cholesky().Solve(differences));
            return double.IsFinite(chiSquare)
                ? new LogRank(groups, chiSquare, free.Length, null)
                : Not("The groups were never at risk together when something ended: nothing can be compared.");
        }
        catch (ArgumentException)
        {
            return Not("The groups were never at risk together when something ended: nothing can be compared.");
        }
    }

    private static LogRank Not(string reason) => new([], double.NaN, 0, reason);
}

/// <summary>What was seen of a group, and what would be expected if all groups lasted alike.</summary>
public readonly record struct LogRankGroupResult(double Count, double Observed, double Expected);
