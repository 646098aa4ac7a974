using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Replay;

/// <summary>Chances of a gap that would have been said, beside how often a gap came.</summary>
public static class ChanceBins
{
    /// <summary>Orders of the last so many days are left out, whatever became of them: those that came quickly would stand for all. Common practice, no source.</summary>
    public const int SettledAfterDays = 182;

    private static readonly double[] Edges = [0, 0.02, 0.05, 0.1, 0.2, 0.5, 1];

    /// <summary>The bins in which something lies, from the smallest chance on.</summary>
    public static IReadOnlyList<ChanceBin> Group(IReadOnlyCollection<(double Said, bool Came)> all) =>
        [
            .. Enumerable
                .Range(0, Edges.Length - 1)
                .Select(i => (From: Edges[i], To: Edges[i + 1], Own: all.Where(o => IsIn(o.Said, i)).ToList()))
                .Where(b => b.Own.Count > 0)
                .Select(b => new ChanceBin(b.From, b.To, b.Own.Average(o => o.Said), b.Own.Count(o => o.Came), b.Own.Count)),
        ];

    private static bool IsIn(double said, int bin) => said >= Edges[bin] && (said < Edges[bin + 1] || bin == Edges.Length - 2);
}

/// <summary>Predictions of about the same chance.</summary>
/// <param name="Said">On average.</param>
/// <param name="Came">Of how many a gap came.</param>
/// <param name="Count">How many there are.</param>
public sealed record ChanceBin(double From, double To, double Said, int Came, int Count)
{
    public BinomialProportion Share => new(Came, Count);
}
