namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What is kept of a population's fit to predict for one client: small enough for a row.</summary>
/// <param name="Coefficients">β, in the order of the covariates.</param>
/// <param name="PracticeMean">δ, per unit of loading.</param>
/// <param name="PracticeVariance">Of δ (Laplace).</param>
/// <param name="ClientSpread">Standard deviation of b, per unit of loading.</param>
/// <param name="Count">Spells behind it.</param>
public sealed record LifePopulation(
    LifeDistribution Distribution,
    double LogScale,
    IReadOnlyList<double> Coefficients,
    double PracticeMean,
    double PracticeVariance,
    double ClientSpread,
    int Count
)
{
    /// <summary>Before anything was seen: s = 0, and the priors of δ and b.</summary>
    public static LifePopulation Unseen(WindowPrior window, int covariates = 0) =>
        new(window.Distribution, 0, new double[covariates], 0, window.PracticeFactor * window.PracticeFactor, window.ClientFactor, 0);

    /// <exception cref="InvalidOperationException">There is no estimate.</exception>
    public static LifePopulation Of(LifetimeFit fit) =>
        fit.Missing is { } why
            ? throw new InvalidOperationException(why.Text)
            : new(
                fit.Distribution,
                fit.LogScale,
                [.. fit.Coefficients.Skip(1)],
                fit.Coefficients[0],
                fit.Covariance[0, 0],
                fit.ClientSpread,
                fit.Count
            );
}
