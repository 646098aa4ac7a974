using MathNet.Numerics;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>The upper tail Q(z) of the normal distribution, true far out too.</summary>
internal static class NormalTail
{
    public const double LogRootTwoPi = 0.918938533204672742;
    private const double Far = 6;

    public static double Density(double z) => Math.Exp(-z * z / 2 - LogRootTwoPi);

    public static double Q(double z) => 0.5 * SpecialFunctions.Erfc(z * Constants.Sqrt1Over2);

    public static double LogQ(double z) => z < Far ? Math.Log(Q(z)) : Math.Log(Mills(z)) - z * z / 2 - LogRootTwoPi;

    /// <summary>φ(z) / Q(z).</summary>
    public static double Hazard(double z) => z < Far ? Density(z) / Q(z) : 1 / Mills(z);

    /// <summary>Q(z) / φ(z), for z not far below 0.</summary>
    public static double Mills(double z)
    {
        if (z < Far)
            return Q(z) / Density(z);
        // Laplace's continued fraction, from the inside out.
        var fraction = z;
        for (var k = 60; k >= 1; k--)
            fraction = z + k / fraction;
        return 1 / fraction;
    }
}
