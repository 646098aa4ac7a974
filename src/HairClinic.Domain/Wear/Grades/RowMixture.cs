using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>Likelihoods added up, with their derivatives by μ and s: the row of the sum.</summary>
internal struct RowMixture
{
    private double _value;
    private double _e;
    private double _s;
    private double _ee;
    private double _es;
    private double _ss;

    public void Add(double share, in RowLogLikelihood terms)
    {
        _value += share;
        _e += share * terms.E;
        _s += share * terms.S;
        _ee += share * (terms.EE + terms.E * terms.E);
        _es += share * (terms.ES + terms.E * terms.S);
        _ss += share * (terms.SS + terms.S * terms.S);
    }

    /// <summary>Densities exp(h(z)) / τ: sums of them, and with g = h′ and k = h″ + h′², of them times g, k, z·g, z·k and z²·k.</summary>
    public void AddDensities(double s, double sg, double sk, double szg, double szk, double szzk, double tau)
    {
        _value += s;
        _e -= sg / tau;
        _s -= szg + s;
        _ee += sk / (tau * tau);
        _es += (2 * sg + szk) / tau;
        _ss += 3 * szg + szzk + s;
    }

    /// <param name="log">The logarithm of what all shares are taken of.</param>
    public readonly RowLogLikelihood ToRow(double log)
    {
        var (e, s) = (_e / _value, _s / _value);
        return new(log + Math.Log(_value), e, s, _ee / _value - e * e, _es / _value - e * s, _ss / _value - s * s);
    }
}
