using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Smallest extreme value: density exp(z − eᶻ), survival exp(−eᶻ).</summary>
internal static class WeibullLikelihood
{
    public static RowLogLikelihood Evaluate(SpellEnd end, double logLower, double logUpper, double eta, double tau)
    {
        var z1 = (logLower - eta) / tau;
        var e1 = Math.Exp(z1);
        if (end == SpellEnd.At)
            return RowLogLikelihood.ForExactEnd(z1 - e1, 1 - e1, -e1, z1, tau, logLower);
        if (end == SpellEnd.After)
            return RowLogLikelihood.FromDerivatives(-e1, -e1, -e1, z1, tau);
        var z2 = (logUpper - eta) / tau;
        var e2 = Math.Exp(z2);
        if (end == SpellEnd.By)
            (z1, e1) = (0, 0);
        // D = exp(−e₁)·(1 − exp(−(e₂ − e₁))): nothing cancels, however early, late or short the interval is.
        var gap = e2 - e1;
        if (double.IsInfinity(gap))
            return RowLogLikelihood.FromDerivatives(-e1, -e1, -e1, z1, tau);
        // So early in the curve that eᶻ itself cannot be written down: 1 − e⁻ᵍ is g, and its logarithm is taken apart.
        if (gap < 1e-100)
        {
            var logFall = z2 + (end == SpellEnd.By ? 0 : Math.Log(-Expm1(z1 - z2)));
            var (start, stop) = (end == SpellEnd.By ? 0 : Math.Exp(z1 - logFall), Math.Exp(z2 - logFall));
            return RowLogLikelihood.ForInterval(logFall, z1, start, start, z2, stop, stop, tau);
        }
        var fall = -Expm1(-gap);
        var a = e1 / fall;
        var b = e2 * Math.Exp(-gap) / fall;
        return RowLogLikelihood.ForInterval(Math.Log(fall) - e1, z1, a, a * (1 - e1), z2, b, b * (1 - e2), tau);
    }

    private static double Expm1(double x)
    {
        if (Math.Abs(x) > 1e-2)
            return Math.Exp(x) - 1;
        return x * (1 + x / 2 * (1 + x / 3 * (1 + x / 4 * (1 + x / 5 * (1 + x / 6 * (1 + x / 7))))));
    }
}
