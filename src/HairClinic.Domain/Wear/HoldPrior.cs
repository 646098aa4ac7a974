using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.RootFinding;

namespace HairClinic.Domain.Wear;

/// <summary>
/// What to expect of an unknown client: the prior predictive distribution of a bond's hold, in days, before any
/// bond of theirs was seen.
/// </summary>
/// <remarks>
/// Log-linear accelerated failure time, ln T = m + b + δ + σ·ε with ε smallest extreme value (so T is Weibull given
/// the person), b the client's and δ the practice's normal effect. The four numbers are set so that the window's
/// ends are the 10 % and 90 % quantiles of T, with 30 % of the log-variance given to people and practice, 2 : 1.
/// A window of no width is taken at its word: every bond holds exactly that long.
/// Making one costs some tens of microseconds: keep it beside the window it belongs to.
/// </remarks>
public sealed class HoldPrior
{
    /// <summary>A rebond is aimed at the last day on which at least this share of bonds is expected to hold.</summary>
    public const double TargetSurvival = 0.80;

    private const int Nodes = 81;
    private const double Reach = 8;

    // The trapezoid rule converges exponentially for a smooth function times a normal density.
    private static readonly (double At, double Weight)[] Normal = NormalNodes();

    private readonly double spread;

    /// <param name="lowDays">10 % quantile, days, above 0.</param>
    /// <param name="highDays">90 % quantile, days, at least <paramref name="lowDays"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">0 &lt; low ≤ high, both finite, does not hold.</exception>
    public HoldPrior(double lowDays, double highDays)
    {
        if (!(lowDays > 0) || !double.IsFinite(highDays) || highDays < lowDays)
            throw new ArgumentOutOfRangeException(nameof(highDays), "A window needs 0 < low <= high.");
        HighDays = highDays;
        var ratio = Math.Log(highDays / lowDays);
        Sigma = WindowPrior.WeibullSigma * ratio;
        Centre = Math.Log(highDays) - WindowPrior.WeibullBelowHigh * ratio;
        ClientSpread = WindowPrior.WeibullClient * ratio;
        PracticeSpread = WindowPrior.WeibullPractice * ratio;
        spread = Math.Sqrt(ClientSpread * ClientSpread + PracticeSpread * PracticeSpread);
        TargetDays = LastDayAtOrAbove(TargetSurvival);
    }

    public HoldPrior(HoldWindow window)
        : this(7.0 * window.EarliestWeeks, 7.0 * window.LatestWeeks) { }

    /// <summary>σ of ln T within one client.</summary>
    public double Sigma { get; }

    /// <summary>m: the location of ln T, days.</summary>
    public double Centre { get; }

    /// <summary>Standard deviation of the client's effect b on ln T.</summary>
    public double ClientSpread { get; }

    /// <summary>Standard deviation of the practice's effect δ on ln T.</summary>
    public double PracticeSpread { get; }

    /// <summary>The day, counted from application, to aim a rebond at: the last whole day with S(t) ≥ 0.80, at least 1.</summary>
    public int TargetDays { get; }

    private double HighDays { get; }

    /// <summary>S(t): the chance that the bond still holds after that many days.</summary>
    public double Survival(double days)
    {
        if (days <= 0)
            return 1;
        if (Sigma == 0)
            return days <= HighDays ? 1 : 0;
        var standard = (Math.Log(days) - Centre) / Sigma;
        var sum = 0.0;
        foreach (var (at, weight) in Normal)
            sum += weight * Math.Exp(-Math.Exp(standard - at * spread / Sigma));
        return sum;
    }

    /// <summary>The days by which a share of bonds has lifted.</summary>
    /// <param name="probability">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not inside (0, 1).</exception>
    public double Quantile(double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), "A quantile needs 0 < p < 1.");
        if (Sigma == 0)
            return HighDays;
        // Survival falls from 1 to 0 well inside this bracket; Brent's method never leaves it.
        var logDays = Brent.FindRoot(
            log => 1 - probability - Survival(Math.Exp(log)),
            Centre - 60 * Sigma,
            Centre + 20 * Sigma,
            1e-12,
            200
        );
        return Math.Exp(logDays);
    }

    private int LastDayAtOrAbove(double survival)
    {
        var day = Math.Max(1, (int)Quantile(1 - survival));
        // The quantile may land a rounding error beside a whole day: the definition decides.
        while (Survival(day + 1) >= survival)
            day++;
        while (day > 1 && Survival(day) < survival)
            day--;
        return day;
    }

    private static (double At, double Weight)[] NormalNodes()
    {
        var nodes = new (double At, double Weight)[Nodes];
        var total = 0.0;
        for (var index = 0; index < Nodes; index++)
        {
            var at = Reach * (2.0 * index / (Nodes - 1) - 1);
            nodes[index] = (at, Math.Exp(-at * at / 2));
            total += nodes[index].Weight;
        }

        for (var index = 0; index < Nodes; index++)
            nodes[index].Weight /= total;
        return nodes;
    }
}
