using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Replacement;

/// <summary>A lead time exp(m + s·Z) with Z normal, or Student's t with some degrees of freedom.</summary>
public readonly record struct SmoothLead(double MeanLog, double SpreadLog, double? DegreesOfFreedom)
{
    /// <summary>P(Λ &gt; days).</summary>
    public double Later(double days)
    {
        if (days <= 0)
            return 1;
        var z = (Math.Log(days) - MeanLog) / SpreadLog;
        return DegreesOfFreedom is { } freedom ? StudentT.CDF(0, 1, freedom, -z) : NormalTail.Q(z);
    }

    /// <summary>E[f(Λ)] for a bounded, smooth f, by the trapezoid rule where the tails fall off exponentially or faster.</summary>
    public double Mean(Func<double, double> f)
    {
        const double Step = 0.005;
        // With z = sinh v a t density falls like e^(−df·v); the normal one is gone by z = 9.
        var reach = DegreesOfFreedom is { } freedom ? Math.Min(700, 3 + 40 / Math.Min(freedom, 40)) : Math.Asinh(9);
        var (sum, total) = (0.0, 0.0);
        for (var v = -reach; v <= reach; v += Step)
        {
            var z = Math.Sinh(v);
            var weight = Density(z) * Math.Cosh(v);
            total += weight;
            sum += weight * f(Math.Exp(MeanLog + SpreadLog * z));
        }
        return sum / total;
    }

    private double Density(double z) =>
        DegreesOfFreedom is { } freedom ? Math.Exp(-(freedom + 1) / 2 * SpecialFunctions.Log1p(z * z / freedom)) : Math.Exp(-z * z / 2);
}
