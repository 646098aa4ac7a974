namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What is kept of a population's fit to predict for one client: small enough for a row.</summary>
/// <param name="Coefficients">β, in the order of the covariates.</param>
/// <param name="PracticeMean">δ, per unit of loading.</param>
/// <param name="PracticeVariance">Of what all clients share, per unit of loading: of δ (Laplace), or of δ and a row's β together (<see cref="ForRow"/>).</param>
/// <param name="ClientSpread">Standard deviation of b, per unit of loading.</param>
/// <param name="Count">Spells behind it.</param>
public sealed record PopulationParameters(
    LifeDistribution Distribution,
    double LogScale,
    IReadOnlyList<double> Coefficients,
    double PracticeMean,
    double PracticeVariance,
    double ClientSpread,
    int Count
)
{
    /// <summary>Of (δ, β…, s) together (Laplace), row by row; null before anything was fitted.</summary>
    public IReadOnlyList<double>? Covariance { get; init; }

    /// <summary>Variance of s; 0 where s is taken as known.</summary>
    public double LogScaleVariance { get; init; }

    /// <summary>By how much what all clients share, per unit of loading, moves with s.</summary>
    public double LogScaleSlope { get; init; }

    /// <summary>Before anything was seen: s = 0, and the priors of δ and b.</summary>
    public static PopulationParameters FromPriors(WindowPrior window, int covariates = 0) =>
        new(window.Distribution, 0, new double[covariates], 0, window.PracticeFactor * window.PracticeFactor, window.ClientFactor, 0);

    /// <exception cref="InvalidOperationException">There is no estimate.</exception>
    public static PopulationParameters FromFit(LifetimeFit fit) =>
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
            )
            {
                Covariance = [.. fit.Covariance.Cast<double>()],
            };

    /// <summary>The same population with the doubt of one row's centre: of λ·δ + xᵀβ, and of s with it.</summary>
    /// <remarks>
    /// δ and β of a column that most rows have cannot be told apart, though their sum is well known; and of a column that few rows have
    /// β is not known well. Only the variance of the sum says how far the row's centre is known.
    /// </remarks>
    /// <param name="loading">λ, above 0: how much of δ the row takes on.</param>
    /// <param name="covariates">x, one for each coefficient.</param>
    /// <param name="unseenVariance">Of effects the fit knew nothing of, added to the row's.</param>
    public PopulationParameters ForRow(double loading, ReadOnlySpan<double> covariates, double unseenVariance = 0)
    {
        if (Covariance is not { } all)
            return this;
        if (covariates.Length != Coefficients.Count || !(loading > 0))
            throw new ArgumentException("A row has a loading above 0 and one value for each coefficient.", nameof(covariates));
        var size = Coefficients.Count + 2;
        var (variance, withScale) = (unseenVariance, 0.0);
        for (var i = 0; i < size - 1; i++)
        {
            var left = i == 0 ? loading : covariates[i - 1];
            if (left == 0)
                continue;
            withScale += left * all[i * size + size - 1];
            for (var j = 0; j < size - 1; j++)
                variance += left * all[i * size + j] * (j == 0 ? loading : covariates[j - 1]);
        }
        var scale = all[size * size - 1];
        var slope = scale > 0 ? withScale / scale : 0;
        return this with
        {
            PracticeVariance = Math.Max(0, variance - slope * withScale) / (loading * loading),
            LogScaleVariance = scale,
            LogScaleSlope = slope / loading,
        };
    }
}
