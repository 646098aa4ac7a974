namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>How much lower ln T of a dud lies than of another unit: N(usual, spread²) cut to (0, 1.5).</summary>
/// <remarks>
/// Duds of one practice are more alike than those of all: about a usual drop of its own, N(0.5, 0.05), they spread by 0.2. Before any was
/// seen that is N(0.5, 0.3²), from simulation, no source.
/// </remarks>
public sealed class DudDrop
{
    private const double Most = 1.5;

    // A unit's own spread is narrow beside it.
    private const int NodeCount = 7;

    // Of duds about their practice's usual drop, and of usual drops over practices, which is a variance.
    private const double SpreadWithin = 0.2;
    private const double VarianceOfUsual = 0.05;

    /// <summary>What is assumed before any dud was seen.</summary>
    public static readonly DudDrop Unlearnt = new(0.5, 0.3);

    /// <summary>Usual drops that are tried in a fit, each with the logarithm of what is assumed of it.</summary>
    internal static readonly IReadOnlyList<(DudDrop Drop, double LogPrior)> Tried =
    [
        .. new[] { 0.1, 0.3, 0.5, 0.7, 0.9 }.Select(usual =>
            (new DudDrop(usual, SpreadWithin), -Math.Pow(usual - Unlearnt.Usual, 2) / (2 * VarianceOfUsual))
        ),
    ];

    /// <param name="usual">Of a dud's ln T against another unit's; above 0.</param>
    /// <param name="spread">Above 0.</param>
    public DudDrop(double usual, double spread)
    {
        (Usual, Spread) = (usual, spread);
        double[] grid = [.. Enumerable.Range(0, 1500).Select(i => Most * (i + 0.5) / 1500)];
        var density = Array.ConvertAll(grid, d => Math.Exp(-(d - usual) * (d - usual) / (2 * spread * spread)));
        var (nodes, shares) = GaussQuadrature.OfDistribution(grid, density, NodeCount);
        Nodes = [.. nodes.Zip(shares)];
        Parts = [(0, 0), .. Nodes.Select(n => (n.Drop, Math.Log(n.Share)))];
    }

    public double Usual { get; }

    public double Spread { get; }

    /// <summary>By Gauss's rule, the shares adding up to 1.</summary>
    public IReadOnlyList<(double Drop, double Share)> Nodes { get; }

    /// <summary>Of no dud, then by node: how much lower ln T lies, and the logarithm of the share among its like.</summary>
    internal (double Lower, double LogShare)[] Parts { get; }

    /// <summary>Of those that were tried, as likely as they were found; as assumed where none was.</summary>
    /// <param name="weights">In the order of <see cref="Tried"/>; they need not add up to 1.</param>
    internal static DudDrop FromTried(IReadOnlyList<double> weights)
    {
        var total = weights.Sum();
        if (total == 0)
            return Unlearnt;
        var usual = Tried.Zip(weights, (t, w) => w * t.Drop.Usual).Sum() / total;
        var doubt = Tried.Zip(weights, (t, w) => w * Math.Pow(t.Drop.Usual - usual, 2)).Sum() / total;
        return new DudDrop(usual, Math.Sqrt(SpreadWithin * SpreadWithin + doubt));
    }
}
