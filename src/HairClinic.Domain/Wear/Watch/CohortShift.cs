using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Watch;

/// <summary>By how much the units of a named cohort last shorter, in ln T, learnt from them with all else taken as the fit has it.</summary>
/// <param name="Mean">Of γ: −0.14 is 13 % shorter.</param>
public sealed record CohortShift(double Mean, double Variance)
{
    /// <summary>What is assumed of a cohort from the day it is named: γ ~ N(−0.14, 0.20²).</summary>
    public static readonly NormalPrior Prior = new(-0.14, 0.20);

    /// <param name="fit">Of all rows but the cohort's.</param>
    /// <param name="rows">All rows of each client who has a unit of the cohort.</param>
    /// <param name="first">The first place of the cohort.</param>
    /// <remarks>
    /// The doubt of the fit is left out: in a joint fit with γ as a covariate of this prior it is in, and γ is then a little less certain.
    /// The integral over γ is Gauss–Hermite's about its peak.
    /// </remarks>
    public static CohortShift Learn(WatchedFit fit, IEnumerable<WatchedRow> rows, int first)
    {
        var likelihood = new ClientShiftLikelihood(fit);
        var clients = ShiftScan.ByClient(rows).Where(own => own.Exists(r => r.Order >= first)).ToList();
        var aside = new double[likelihood.Size - 1];
        var (peak, width) = (Prior.Mean, Prior.Spread);
        for (var step = 0; step < 50; step++)
        {
            var (_, slope, bend) = At(peak);
            width = 1 / Math.Sqrt(bend);
            var change = Math.Clamp(slope / bend, -Prior.Spread, Prior.Spread);
            peak += change;
            if (!(Math.Abs(change) > 1e-9))
                break;
        }
        var rule = GaussHermite.Client;
        var (nodes, heights) = (new double[rule.Nodes.Length], new double[rule.Nodes.Length]);
        for (var k = 0; k < nodes.Length; k++)
        {
            nodes[k] = peak + Math.Sqrt(2) * width * rule.Nodes[k];
            heights[k] = rule.LogWeights[k] + rule.Nodes[k] * rule.Nodes[k] + At(nodes[k]).Value;
        }
        var top = heights.Max();
        var shares = Array.ConvertAll(heights, height => Math.Exp(height - top));
        var mean = shares.Zip(nodes, (share, node) => share * node).Sum() / shares.Sum();
        return new CohortShift(mean, shares.Zip(nodes, (share, node) => share * (node - mean) * (node - mean)).Sum() / shares.Sum());

        (double Value, double Slope, double Bend) At(double shift)
        {
            var away = shift - Prior.Mean;
            var (value, slope, bend) = (-away * away * Prior.Precision / 2, -away * Prior.Precision, Prior.Precision);
            foreach (var own in clients)
            {
                likelihood.MoveToClient(own);
                likelihood.Evaluate(first, shift, aside);
                value += likelihood.Value;
                slope += likelihood.Gradient[^1];
                bend += Math.Max(0, -likelihood.Hessian[^1]);
            }
            return (value, slope, bend);
        }
    }
}
