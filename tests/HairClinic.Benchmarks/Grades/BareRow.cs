using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Benchmarks.Grades;

/// <summary>The baseline: a Weibull row without grades, with its derivatives, written down as plainly as it goes.</summary>
internal static class BareRow
{
    public static double LogLikelihood(Spell life, double centre, double tau, Span<double> slopes, Span<double> bends)
    {
        var z = life.Lower > 0 ? (Math.Log(life.Lower) - centre) / tau : 0;
        var e = life.Lower > 0 ? Math.Exp(z) : 0;
        if (life.End == SpellEnd.After)
        {
            (slopes[0], slopes[1]) = (e / tau, z * e);
            (bends[0], bends[1], bends[2]) = (-e / (tau * tau), -e * (1 + z) / tau, -z * e * (1 + z));
            return -e;
        }
        var z2 = (Math.Log(life.Upper) - centre) / tau;
        var e2 = Math.Exp(z2);
        var fall = 1 - Math.Exp(e - e2);
        var (a, b) = (e / fall, e2 * Math.Exp(e - e2) / fall);
        var (c, d) = (a * (1 - e), b * (1 - e2));
        var (flat, tilted) = (b - a, z2 * b - z * a);
        (slopes[0], slopes[1]) = (-flat / tau, -tilted);
        bends[0] = (d - c - flat * flat) / (tau * tau);
        bends[1] = (z2 * d - z * c - flat * tilted + flat) / tau;
        bends[2] = tilted + z2 * z2 * d - z * z * c - tilted * tilted;
        return Math.Log(fall) - e;
    }
}
