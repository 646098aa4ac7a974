using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Normal noise: density φ(z), survival Q(z).</summary>
internal static class LogNormalLikelihood
{
    public static RowLogLikelihood Evaluate(SpellEnd end, double logLower, double logUpper, double eta, double tau)
    {
        var z1 = (logLower - eta) / tau;
        if (end == SpellEnd.At)
            return RowLogLikelihood.ForExactEnd(-z1 * z1 / 2 - NormalTail.LogRootTwoPi, -z1, -1, z1, tau, logLower);
        if (end == SpellEnd.After)
            return After(z1, tau);
        var z2 = (logUpper - eta) / tau;
        if (end == SpellEnd.By)
        {
            var hazard = NormalTail.Hazard(-z2);
            return RowLogLikelihood.FromDerivatives(NormalTail.LogQ(-z2), hazard, -hazard * (hazard + z2), z2, tau);
        }
        // Both ends on one side of the centre are looked at from the far tail, where nothing cancels.
        var (near, far) = z1 >= 0 ? (z1, z2) : (-z2, -z1);
        double logD;
        if (near >= 0)
        {
            var shrink = Math.Exp((near - far) * (near + far) / 2);
            var mills = NormalTail.Mills(near) - (shrink == 0 ? 0 : NormalTail.Mills(far) * shrink);
            logD = Math.Log(mills) - near * near / 2 - NormalTail.LogRootTwoPi;
        }
        else
        {
            logD = Math.Log(1 - NormalTail.Q(-z1) - NormalTail.Q(z2));
        }
        var a = Math.Exp(-z1 * z1 / 2 - NormalTail.LogRootTwoPi - logD);
        var b = Math.Exp(-z2 * z2 / 2 - NormalTail.LogRootTwoPi - logD);
        return RowLogLikelihood.ForInterval(logD, z1, a, -z1 * a, z2, b, -z2 * b, tau);
    }

    private static RowLogLikelihood After(double z, double tau)
    {
        var hazard = NormalTail.Hazard(z);
        return RowLogLikelihood.FromDerivatives(NormalTail.LogQ(z), -hazard, -hazard * (hazard - z), z, tau);
    }
}
