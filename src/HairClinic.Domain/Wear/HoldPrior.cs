using HairClinic.Domain.Wear.Lifetimes;

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

    // Null for a window of no width.
    private readonly WindowPrior? _window;
    private readonly LifePrediction? _prediction;

    /// <param name="lowDays">10 % quantile, days, above 0.</param>
    /// <param name="highDays">90 % quantile, days, at least <paramref name="lowDays"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">0 &lt; low ≤ high, both finite, does not hold.</exception>
    public HoldPrior(double lowDays, double highDays)
    {
        if (!(lowDays > 0) || !double.IsFinite(highDays) || highDays < lowDays)
            throw new ArgumentOutOfRangeException(nameof(highDays), "A window needs 0 < low <= high.");
        HighDays = highDays;
        TargetDays = Math.Max(1, (int)highDays);
        if (highDays == lowDays)
            return;
        var wide = WindowPrior.FromWindow(LifeDistribution.Weibull, lowDays, highDays);
        var population = PopulationParameters.FromPriors(wide);
        _window = wide;
        _prediction = new LifePrediction(population, ClientEffectNodes.For(population), wide.Place);
        TargetDays = _prediction.LastDayAtOrAbove(TargetSurvival);
    }

    public HoldPrior(HoldWindow window)
        : this(7.0 * window.EarliestWeeks, 7.0 * window.LatestWeeks) { }

    /// <summary>σ of ln T within one client.</summary>
    public double Sigma => _window?.Sigma ?? 0;

    /// <summary>m: the location of ln T, days.</summary>
    public double Centre => _window?.Centre ?? Math.Log(HighDays);

    /// <summary>Standard deviation of the client's effect b on ln T.</summary>
    public double ClientSpread => _window?.ClientSpread ?? 0;

    /// <summary>Standard deviation of the practice's effect δ on ln T.</summary>
    public double PracticeSpread => _window?.PracticeSpread ?? 0;

    /// <summary>The day, counted from application, to aim a rebond at: the last whole day with S(t) ≥ 0.80, at least 1.</summary>
    public int TargetDays { get; }

    private double HighDays { get; }

    /// <summary>S(t): the chance that the bond still holds after that many days.</summary>
    public double Survival(double days) => _prediction?.Survival(days) ?? (days <= HighDays ? 1 : 0);

    /// <summary>The days by which a share of bonds has lifted.</summary>
    /// <param name="probability">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not inside (0, 1).</exception>
    public double Quantile(double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), "A quantile needs 0 < p < 1.");
        return _prediction?.Quantile(probability) ?? HighDays;
    }
}
