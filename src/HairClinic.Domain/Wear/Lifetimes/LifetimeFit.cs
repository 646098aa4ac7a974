namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A fitted model: estimates of the population's few parameters.</summary>
public sealed class LifetimeFit
{
    internal LifetimeFit() { }

    public const string InterceptName = "(Intercept)";

    public required LifeDistribution Distribution { get; init; }

    /// <summary>The intercept, then the covariates.</summary>
    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>δ, then β; empty where there is no estimate.</summary>
    public required IReadOnlyList<double> Coefficients { get; init; }

    /// <summary>s: the windows' σ is multiplied by eˢ. In plain maximum likelihood eˢ is the scale itself.</summary>
    public required double LogScale { get; init; }

    public double Scale => Math.Exp(LogScale);

    /// <summary>Of the coefficients in order, and of s: the inverse of the bend at the peak (Laplace).</summary>
    public required double[,] Covariance { get; init; }

    /// <summary>Density of T, not of ln T; clients' effects integrated out.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>The log-likelihood plus the logarithm of the priors' densities.</summary>
    public required double LogPosterior { get; init; }

    /// <summary>
    /// The logarithm of how likely the rows are, all parameters integrated out (Laplace), less a constant of their number: between priors of
    /// one model it says which the rows speak for. No number without an estimate.
    /// </summary>
    public double LogEvidence { get; internal init; } = double.NaN;

    /// <summary>Standard deviation of a client's effect; 0 where clients do not differ.</summary>
    public required double ClientSpread { get; init; }

    public required int Iterations { get; init; }
    public required bool Converged { get; init; }

    /// <summary>Rows with information, and those of them that ended.</summary>
    public required int Count { get; init; }

    public required int Ended { get; init; }

    /// <summary>Known ends were taken as known to the day only; the likelihood is then that of intervals, not a density.</summary>
    public bool EndsToTheDay => Notes.Contains(LifetimeFitNote.EndsToTheDay);

    /// <summary>Why there is no estimate; null where there is one.</summary>
    public LifetimeFitNote? Missing { get; init; }

    public required IReadOnlyList<LifetimeFitNote> Notes { get; init; }

    public double StdError(int parameter) => Math.Sqrt(Covariance[parameter, parameter]);

    internal static LifetimeFit NoEstimate(LifeDistribution distribution, LifetimeFitRows rows, LifetimeFitNote why, int iterations = 0) =>
        new()
        {
            Distribution = distribution,
            Names = [InterceptName, .. rows.Names],
            Coefficients = [],
            LogScale = double.NaN,
            Covariance = new double[0, 0],
            LogLikelihood = double.NaN,
            LogPosterior = double.NaN,
            ClientSpread = double.NaN,
            Iterations = iterations,
            Converged = false,
            Count = rows.Count,
            Ended = rows.Ended,
            Missing = why,
            Notes = [],
        };
}
