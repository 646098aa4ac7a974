using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A row of a unit that may be a dud (<see cref="UnitCourses"/>): its likelihood over how much lower its ln T may lie.</summary>
internal static class DudLikelihood
{
    /// <param name="share">π, above 0 and below 1.</param>
    public static RowLogLikelihood Evaluate(
        LifeDistribution distribution,
        SpellEnd end,
        double logLower,
        double logUpper,
        double eta,
        double tau,
        double share,
        DudDrop drop
    )
    {
        Span<RowLogLikelihood> parts = stackalloc RowLogLikelihood[drop.Parts.Length];
        var top = double.NegativeInfinity;
        var (logSound, logDud) = (Math.Log(1 - share), Math.Log(share));
        for (var k = 0; k < parts.Length; k++)
        {
            var (lower, logShare) = drop.Parts[k];
            var part =
                distribution == LifeDistribution.Weibull
                    ? WeibullLikelihood.Evaluate(end, logLower, logUpper, eta - lower, tau)
                    : LogNormalLikelihood.Evaluate(end, logLower, logUpper, eta - lower, tau);
            parts[k] = part with { Value = part.Value + logShare + (k == 0 ? logSound : logDud) };
            top = Math.Max(top, parts[k].Value);
        }
        return Mix(parts, top);
    }

    // Of Σ exp(value): the first derivatives are means over the parts, the second those of the parts and the parts' spread of the first.
    private static RowLogLikelihood Mix(ReadOnlySpan<RowLogLikelihood> parts, double top)
    {
        if (double.IsNegativeInfinity(top))
            return parts[0];
        var (sum, e, s, ee, es, ss) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var part in parts)
        {
            var share = Math.Exp(part.Value - top);
            if (share < 1e-18)
                continue;
            sum += share;
            e += share * part.E;
            s += share * part.S;
            ee += share * (part.EE + part.E * part.E);
            es += share * (part.ES + part.E * part.S);
            ss += share * (part.SS + part.S * part.S);
        }
        (e, s) = (e / sum, s / sum);
        return new(top + Math.Log(sum), e, s, ee / sum - e * e, es / sum - e * s, ss / sum - s * s);
    }
}
