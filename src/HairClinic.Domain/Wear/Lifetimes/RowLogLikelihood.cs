namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>
/// One row's log-likelihood and its first and second derivatives, by the row's centre η of ln T and by s, the
/// logarithm of the scale: with z = (ln t − η) / τ and τ = eˢ·σ, dz/dη = −1/τ and dz/ds = −z.
/// </summary>
internal readonly record struct RowLogLikelihood(double Value, double E, double S, double EE, double ES, double SS)
{
    /// <summary>From g(z) = ln of density or survival, and its derivatives.</summary>
    public static RowLogLikelihood FromDerivatives(double value, double g1, double g2, double z, double tau) =>
        new(value, -g1 / tau, -z * g1, g2 / (tau * tau), (g1 + z * g2) / tau, z * g1 + z * z * g2);

    /// <summary>As <see cref="FromDerivatives"/>, for a known end: the density of T itself has −ln τ − ln t besides.</summary>
    public static RowLogLikelihood ForExactEnd(double value, double g1, double g2, double z, double tau, double logTime)
    {
        var terms = FromDerivatives(value - Math.Log(tau) - logTime, g1, g2, z, tau);
        return terms with { S = terms.S - 1 };
    }

    /// <summary>From D = F(z₂) − F(z₁), with densities (a, b) and their slopes (c, d) at both ends, all divided by D.</summary>
    /// <remarks>Where there is no lower end, z₁, a and c are 0.</remarks>
    public static RowLogLikelihood ForInterval(double value, double z1, double a, double c, double z2, double b, double d, double tau)
    {
        var (flat, tilted) = (b - a, z2 * b - z1 * a);
        return new(
            value,
            -flat / tau,
            -tilted,
            (d - c - flat * flat) / (tau * tau),
            (z2 * d - z1 * c - flat * tilted + flat) / tau,
            tilted + z2 * z2 * d - z1 * z1 * c - tilted * tilted
        );
    }
}
