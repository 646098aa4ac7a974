using MathNet.Numerics;

namespace HairClinic.Domain.Replacement;

/// <summary>A Weibull life that has lasted so long already.</summary>
/// <remarks>
/// Everything goes by the logarithm of the wear, −ln of the survival since today: however far the age lies past any life, or before it,
/// nothing overflows and nothing is a difference of two large numbers.
/// </remarks>
/// <param name="Shape">1/σ, above 0.</param>
/// <param name="ScaleDays">The characteristic life, above 0.</param>
/// <param name="AgeDays">Worn days until today, 0 or more.</param>
public readonly record struct AgedWeibullLife(double Shape, double ScaleDays, double AgeDays)
{
    /// <summary>The chance that it is worn out within that many further worn days.</summary>
    public double ChanceEndsWithin(double days) => days <= 0 ? 0 : -Expm1(-Math.Exp(LogWear(days)));

    /// <summary>The further worn days by which a share is worn out, of units that lasted so long.</summary>
    /// <param name="logWear">ln(−ln(1 − share)).</param>
    internal double DaysUntil(double logWear)
    {
        if (AgeDays == 0)
            return ScaleDays * Math.Exp(logWear / Shape);
        var ofWornSoFar = logWear - Shape * Math.Log(AgeDays / ScaleDays);
        return AgeDays * Expm1((ofWornSoFar > 40 ? ofWornSoFar : SpecialFunctions.Log1p(Math.Exp(ofWornSoFar))) / Shape);
    }

    // ln of ((age + days) / scale)^shape − (age / scale)^shape.
    private double LogWear(double days)
    {
        var whole = Shape * Math.Log((AgeDays + days) / ScaleDays);
        var growth = Shape * SpecialFunctions.Log1p(days / AgeDays);
        return growth < 1
            ? Shape * Math.Log(AgeDays / ScaleDays) + Math.Log(Expm1(growth))
            : whole + SpecialFunctions.Log1p(-Math.Exp(-growth));
    }

    // exp(x) − 1, true for small x too.
    private static double Expm1(double x)
    {
        if (Math.Abs(x) > 1)
            return Math.Exp(x) - 1;
        var half = Math.Tanh(x / 2);
        return 2 * half / (1 - half);
    }
}
