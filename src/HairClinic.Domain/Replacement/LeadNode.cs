using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>One pair of mean and spread of ln Λ, with its share of belief.</summary>
internal readonly record struct LeadNode(double Mean, double Spread, double Share)
{
    /// <summary>Trapezoid rules over the logarithm of the variance and over the mean given it: both converge exponentially.</summary>
    public static LeadNode[] Grid(double centre, double weight, double variance, double freedom, ReadOnlySpan<double> waitedDays)
    {
        // Half a standard deviation of the logarithm of the variance.
        var varianceStep = Math.Sqrt(0.5 / freedom);
        const double MeanStep = 0.75;
        const double MeanReach = 6.75;
        var nodes = new List<LeadNode>();
        var total = 0.0;
        for (var x = -3.6; x < 4 + 60 / freedom; x += varianceStep)
        {
            var spread = Math.Sqrt(variance * Math.Exp(x));
            var height = -freedom / 2 * (x + Math.Exp(-x) - 1);
            for (var v = -MeanReach; v <= MeanReach; v += MeanStep)
            {
                var mean = centre + v * spread / Math.Sqrt(weight);
                var log = height - v * v / 2;
                foreach (var waited in waitedDays)
                    log += waited > 0 ? NormalTail.LogQ((Math.Log(waited) - mean) / spread) : 0;
                nodes.Add(new LeadNode(mean, spread, Math.Exp(log)));
                total += nodes[^1].Share;
            }
        }
        return [.. nodes.Where(node => node.Share > 1e-12 * total).Select(node => node with { Share = node.Share / total })];
    }
}
