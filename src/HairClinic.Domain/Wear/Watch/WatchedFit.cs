using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Watch;

/// <summary>The fit whose rows a watch reads: its peak, and how far it is in doubt.</summary>
/// <param name="Parameters">δ, then β, then s.</param>
/// <param name="Covariance">Of the parameters, row by row (Laplace).</param>
/// <param name="ClientSpread">Standard deviation of a client's effect, per unit of loading; 0 where clients do not differ.</param>
public sealed record WatchedFit(
    LifeDistribution Distribution,
    IReadOnlyList<double> Parameters,
    IReadOnlyList<double> Covariance,
    double ClientSpread
)
{
    /// <exception cref="InvalidOperationException">There is no estimate.</exception>
    public static WatchedFit From(LifetimeFit fit) =>
        fit.Missing is { } why
            ? throw new InvalidOperationException(why.Text)
            : new(fit.Distribution, [.. fit.Coefficients, fit.LogScale], [.. fit.Covariance.Cast<double>()], fit.ClientSpread);

    /// <exception cref="InvalidOperationException">There is no estimate.</exception>
    public static WatchedFit From(StoredFit fit) =>
        fit.Converged
            ? new(fit.Distribution, [.. fit.Coefficients, fit.LogScale!.Value], fit.Covariance, fit.ClientSpread!.Value)
            : throw new InvalidOperationException("This fit has no estimate.");

    /// <summary>The inverse covariance of δ and β while s stays as it is.</summary>
    /// <exception cref="ArgumentException">The covariance is not positive definite.</exception>
    internal double[] PrecisionAtScale()
    {
        var (all, size) = (Parameters.Count, Parameters.Count - 1);
        if (ScaledCholesky.TryFactorize([.. Covariance], all, 0, out _) is not { } covariance)
            throw new ArgumentException("The covariance of the parameters is not positive definite.");
        var inverse = covariance.Inverse();
        var precision = new double[size * size];
        for (var j = 0; j < size; j++)
            inverse.AsSpan(j * all, size).CopyTo(precision.AsSpan(j * size));
        return precision;
    }
}
