using System.Numerics;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>The upper tail Q(z) of the normal distribution, true far out too.</summary>
/// <remarks>
/// All of it comes from Mills' ratio, for one number or several at once: (z + 1)·Q(z) / φ(z) as a polynomial of (z − 4) / (z + 4), from its Chebyshev
/// series in 40-digit arithmetic. It is off by 4e-16 of itself at most.
/// </remarks>
internal static class NormalTail
{
    public const double LogRootTwoPi = 0.918938533204672742;

    private static readonly double[] Polynomial =
    [
        1.1832619145678034,
        -0.2423996705218081,
        0.035091880234748005,
        0.07169048120143744,
        -0.0807080096790523,
        0.04495912907706981,
        -0.01253910362039814,
        -0.000715950905283812,
        0.0017418487737325865,
        -0.00023670175882712274,
        -0.00022021557569575946,
        5.3266970938316e-05,
        3.415881433186646e-05,
        -8.606187876098561e-06,
        -6.5533544553250526e-06,
        1.0194890871014661e-06,
        1.3907627080903224e-06,
        -3.1010836127584442e-09,
        -2.8692999663065703e-07,
        -4.494916381831193e-08,
        5.0778441295964725e-08,
        1.372305945164135e-08,
        -6.562440264547017e-09,
        -1.695299681747531e-09,
        4.480233427988313e-10,
    ];

    public static double Density(double z) => Math.Exp(-z * z / 2 - LogRootTwoPi);

    public static double Q(double z) => z < 0 ? 1 - Density(z) * Mills(-z) : Density(z) * Mills(z);

    public static double LogQ(double z) => z < 0 ? Math.Log(Q(z)) : Math.Log(Mills(z)) - z * z / 2 - LogRootTwoPi;

    /// <summary>φ(z) / Q(z).</summary>
    public static double Hazard(double z) => z < 0 ? Density(z) / Q(z) : 1 / Mills(z);

    /// <summary>Q(z) / φ(z), for z from 0.</summary>
    public static double Mills(double z)
    {
        // (z − 4) / (z + 4) where z may be without bound.
        var (t, sum) = (1 - 8 / (z + 4), 0.0);
        for (var k = Polynomial.Length - 1; k >= 0; k--)
            sum = Math.FusedMultiplyAdd(sum, t, Polynomial[k]);
        return sum / (z + 1);
    }

    /// <summary>ln Q(z) and φ(z) / Q(z) of several numbers at once.</summary>
    public static (Vector<double> LogQ, Vector<double> Hazard) LogQAndHazard(Vector<double> z)
    {
        var (from, half) = (Vector.Abs(z), -0.5 * z * z - new Vector<double>(LogRootTwoPi));
        var t = Vector<double>.One - new Vector<double>(8) / (from + new Vector<double>(4));
        var sum = Vector<double>.Zero;
        for (var k = Polynomial.Length - 1; k >= 0; k--)
            sum = Vector.FusedMultiplyAdd(sum, t, new Vector<double>(Polynomial[k]));
        var mills = sum / (from + Vector<double>.One);
        var early = Vector.LessThan(z, Vector<double>.Zero);
        var density = Vector.Exp(half);
        var below = Vector<double>.One - density * mills;
        var log = Vector.Log(Vector.ConditionalSelect(early, below, mills));
        return (
            log + Vector.ConditionalSelect(early, Vector<double>.Zero, half),
            Vector.ConditionalSelect(early, density / below, Vector<double>.One / mills)
        );
    }
}
