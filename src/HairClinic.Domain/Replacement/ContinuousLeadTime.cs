using MathNet.Numerics;

namespace HairClinic.Domain.Replacement;

/// <summary>A lead time exp(m + s·Z) with Z normal, or Student's t with some degrees of freedom.</summary>
/// <remarks>
/// Chances are sums of the density itself, for every number of degrees of freedom alike: the usual way to Student's t, an incomplete
/// beta function, loses digits with many (with 10¹² it is off by 10⁻⁵), where it must go over into the normal.
/// </remarks>
public sealed class ContinuousLeadTime
{
    /// <summary>Fewer are refused: even with these the spread says next to nothing of a lead time.</summary>
    public const double FewestDegreesOfFreedom = 0.1;

    // From each cut to the next, z = sinh v: what lies beyond it, not yet divided by the whole.
    private readonly double[] _cuts;
    private readonly double[] _beyond;

    /// <param name="meanLog">m, of ln(days).</param>
    /// <param name="spreadLog">s, above 0.</param>
    /// <param name="degreesOfFreedom">Null for the normal.</param>
    public ContinuousLeadTime(double meanLog, double spreadLog, double? degreesOfFreedom)
    {
        if (!double.IsFinite(meanLog) || !(spreadLog > 0) || !double.IsFinite(spreadLog))
            throw new ArgumentOutOfRangeException(nameof(spreadLog), "A lead time has a centre, and a spread above 0.");
        if (degreesOfFreedom is { } freedom && !(freedom >= FewestDegreesOfFreedom && double.IsFinite(freedom)))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), "There are too few degrees of freedom, or no number of them.");
        (MeanLog, SpreadLog, DegreesOfFreedom) = (meanLog, spreadLog, degreesOfFreedom);
        _cuts = [.. Cuts()];
        _beyond = new double[_cuts.Length];
        _beyond[^1] = FarBeyond(Math.Sinh(_cuts[^1]));
        for (var i = _cuts.Length - 2; i >= 0; i--)
            _beyond[i] = _beyond[i + 1] + PanelQuadrature.Panel(_cuts[i], _cuts[i + 1], Height);
        NoiseCuts = [.. _cuts.Skip(1).Select(v => -Math.Sinh(v)).Reverse(), .. _cuts.Select(Math.Sinh)];
    }

    public double MeanLog { get; }

    public double SpreadLog { get; }

    public double? DegreesOfFreedom { get; }

    /// <summary>Values of Z between which its density hardly turns, in order; beyond the last the lead time is 0 or for ever.</summary>
    internal IReadOnlyList<double> NoiseCuts { get; }

    /// <summary>P(Λ &gt; days).</summary>
    public double Survival(double days) => days <= 0 ? 1 : Tail(NoiseAt(Math.Log(days)));

    internal double NoiseAt(double logDays) => (logDays - MeanLog) / SpreadLog;

    internal double LogDaysAt(double z) => MeanLog + SpreadLog * z;

    /// <summary>P(Z &gt; z).</summary>
    internal double Tail(double z)
    {
        if (z < 0)
            return 1 - Tail(-z);
        var v = Math.Asinh(z);
        var next = Array.BinarySearch(_cuts, v);
        next = next < 0 ? ~next : next;
        var beyond = next == _cuts.Length ? FarBeyond(z) : PanelQuadrature.Panel(v, _cuts[next], Height) + _beyond[next];
        return beyond / (2 * _beyond[0]);
    }

    /// <summary>Of Z.</summary>
    internal double Density(double z) => Shape(z) / (2 * _beyond[0]);

    // Up to where nothing is left, or the tail is a plain power and the days are 0 or for ever.
    private IEnumerable<double> Cuts()
    {
        var far = Math.Max(1e9 * Math.Sqrt(DegreesOfFreedom ?? 1), 1500 / SpreadLog);
        var v = 0.0;
        while (Height(v) > 0 && Math.Sinh(v) < far)
        {
            yield return v;
            // The logarithm of the density turns by at most 8 from one to the next.
            var z = Math.Sinh(v) + 1;
            var slope = DegreesOfFreedom is { } freedom ? (freedom + 1) * z / (freedom + z * z) * z : z * z;
            v += Math.Min(0.25, 8 / slope);
        }
        yield return v;
    }

    // Of v, with z = sinh v.
    private double Height(double v) => Shape(Math.Sinh(v)) * Math.Cosh(v);

    private double Shape(double z) =>
        DegreesOfFreedom is { } freedom ? Math.Exp(-(freedom + 1) / 2 * SpecialFunctions.Log1p(z / freedom * z)) : Math.Exp(-z * z / 2);

    // Far out t's density is a power of z.
    private double FarBeyond(double z) => DegreesOfFreedom is { } freedom && Shape(z) is var shape and > 0 ? z / freedom * shape : 0;
}
