namespace HairClinic.Domain.Wear.Curves;

/// <summary>Turnbull's estimate of how many go on, for ends that are known exactly, within intervals, or not yet.</summary>
/// <remarks>
/// The likelihood's maximum by expectation and maximisation, on the innermost intervals. It says how it ended: a curve
/// that did not settle is shown as such.
/// </remarks>
public sealed class TurnbullCurve
{
    private const int Longest = 20_000;
    private const double Settled = 1e-10;

    private TurnbullCurve(TurnbullStep[] steps, int iterations, double change) =>
        (Steps, Iterations, LargestChange) = (steps, iterations, change);

    public IReadOnlyList<TurnbullStep> Steps { get; }

    public int Iterations { get; }

    /// <summary>Of any mass, in the last iteration.</summary>
    public double LargestChange { get; }

    public bool Converged => LargestChange <= Settled;

    public static TurnbullCurve Estimate(ReadOnlySpan<Spell> spells)
    {
        var cells = InnermostIntervals.Find(spells);
        var (from, to) = (new int[spells.Length], new int[spells.Length]);
        for (var i = 0; i < spells.Length; i++)
            (from[i], to[i]) = cells.CellRangeOf(spells[i]);
        var climb = new TurnbullMaximizer(spells, from, to);
        var mass = new double[cells.Count];
        Array.Fill(mass, cells.Count == 0 ? 0 : 1.0 / cells.Count);
        var (iterations, change) = cells.Count < 2 ? (0, 0) : climb.Maximize(mass, Settled, Longest);
        var left = 1.0;
        var steps = new TurnbullStep[cells.Count];
        for (var j = 0; j < steps.Length; j++)
        {
            left = j == steps.Length - 1 ? 0 : Math.Max(0, left - mass[j]);
            steps[j] = new(cells.StartOf(j), cells.EndOf(j), mass[j], left);
        }
        return new TurnbullCurve(steps, iterations, change);
    }
}

/// <summary>A stretch (from, to] in which ends can lie; both equal for one known time, no upper end where all is open.</summary>
/// <param name="Mass">The share that ended there.</param>
/// <param name="Survival">The share that goes on after it. Inside the stretch the data do not say how it falls.</param>
public readonly record struct TurnbullStep(double From, double To, double Mass, double Survival);
