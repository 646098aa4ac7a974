namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Normal priors of the few population parameters; an infinite spread is a flat prior.</summary>
/// <param name="Intercept">Of δ, the practice's own shift of ln T.</param>
/// <param name="Coefficients">Of β, one for each covariate.</param>
/// <param name="LogScale">Of s, the logarithm of the factor on each window's σ.</param>
/// <param name="ClientSpread">Standard deviation of a client's effect b; 0 where clients do not differ.</param>
public sealed record LifePriors(LifePrior Intercept, IReadOnlyList<LifePrior> Coefficients, LifePrior LogScale, double ClientSpread = 0)
{
    /// <summary>s ~ N(0, 0.4²).</summary>
    public static readonly LifePrior UsualLogScale = new(0, 0.4);

    /// <summary>β ~ N(0, 0.35²), where the practice has no factor row of its own.</summary>
    public static readonly LifePrior UsualCoefficient = new(0, 0.35);

    /// <summary>Plain maximum likelihood.</summary>
    public static LifePriors Flat(int covariates) =>
        new(LifePrior.Flat, [.. Enumerable.Repeat(LifePrior.Flat, covariates)], LifePrior.Flat);

    /// <summary>Every parameter has a prior of its own, so that there is always an answer.</summary>
    public bool AreProper => Intercept.IsProper && LogScale.IsProper && Coefficients.All(c => c.IsProper);
}
