namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A window row's share in the model: where ln T lies and how it spreads before anything was seen.</summary>
/// <remarks>
/// The window's ends are the 10 % and 90 % quantiles of T for an unknown client, with 30 % of the log-variance given
/// to people and practice, 2 : 1; the factors were solved numerically when the model was designed. All spreads grow with
/// <see cref="Width"/>, ln(high / low), so b and δ are kept per unit of width: one client's b means the same in
/// every window, and each window alone gives back its own two quantiles.
/// </remarks>
public readonly record struct WindowPrior
{
    // Of a Weibull window, per unit of width.
    private const double WeibullSigma = 0.264245;
    private const double WeibullBelowHigh = 0.325714;
    private const double WeibullClient = 0.181153;
    private const double WeibullPractice = 0.128095;

    private WindowPrior(LifeDistribution distribution, double centre, double width, double sigma, double client, double practice) =>
        (Distribution, Centre, Width, SigmaFactor, ClientFactor, PracticeFactor) = (distribution, centre, width, sigma, client, practice);

    public LifeDistribution Distribution { get; }

    /// <summary>m: the location of ln T, days.</summary>
    public double Centre { get; }

    /// <summary>r = ln(high / low): the loading of b and δ on a row with this window.</summary>
    public double Width { get; }

    private double SigmaFactor { get; }

    /// <summary>Standard deviation of b per unit of width.</summary>
    public double ClientFactor { get; }

    /// <summary>Standard deviation of δ per unit of width.</summary>
    public double PracticeFactor { get; }

    /// <summary>σ of ln T within one client.</summary>
    public double Sigma => SigmaFactor * Width;

    public double ClientSpread => ClientFactor * Width;

    public double PracticeSpread => PracticeFactor * Width;

    /// <param name="lowDays">10 % quantile, days, above 0.</param>
    /// <param name="highDays">90 % quantile, days, above <paramref name="lowDays"/>.</param>
    public static WindowPrior FromWindow(LifeDistribution distribution, double lowDays, double highDays)
    {
        if (!(lowDays > 0) || !double.IsFinite(highDays) || !(highDays > lowDays))
            throw new ArgumentOutOfRangeException(nameof(highDays), "A window needs 0 < low < high.");
        var width = Math.Log(highDays / lowDays);
        return distribution == LifeDistribution.Weibull
            ? new(distribution, Math.Log(highDays) - WeibullBelowHigh * width, width, WeibullSigma, WeibullClient, WeibullPractice)
            : new(distribution, (Math.Log(lowDays) + Math.Log(highDays)) / 2, width, 0.326425, 0.174481, 0.123377);
    }

    /// <summary>Any window: b and δ are kept per unit of width, so where only they are asked about, one serves for all.</summary>
    public static WindowPrior ForAnyWindow(LifeDistribution distribution) => FromWindow(distribution, 1, 2);

    public RowLocationScale Place => new(Centre, Sigma, Width);

    /// <summary>The priors of a fit over rows that all carry such windows.</summary>
    public LifePriors ToLifePriors(IReadOnlyList<NormalPrior> coefficients) =>
        new(new(0, PracticeFactor), coefficients, LifePriors.UsualLogScale, ClientFactor);
}

/// <summary>The noise of ln T around its centre.</summary>
public enum LifeDistribution
{
    /// <summary>Smallest extreme value: T is Weibull with shape 1/σ.</summary>
    Weibull,

    /// <summary>Normal: T is log-normal.</summary>
    LogNormal,
}
