using System.Numerics;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>Nodes over a stretch of x, with p̃ on them: for any centre and scale the mean of p̃ there, as the density of x weighs it.</summary>
internal sealed class GradePanels
{
    // Gauss's rule in panels of three quarters of the window's σ; no more than so many in a window of next to no width.
    private const double PanelInSigmas = 0.75;
    private const int MostPanels = 120;

    // With less than this on the nodes the density is not seen there: a life absurdly early or late.
    private const double LeastSeen = 1e-9;

    // Beyond e^600 numbers end.
    private const double FarthestGrowth = 600;

    private readonly bool _weibull;
    private readonly double[] _nodes;
    private readonly double[] _shares;
    private readonly double[] _graded;

    public GradePanels(GradeCurve curve, double from, double to)
    {
        _weibull = curve.Grid.Window.Distribution == LifeDistribution.Weibull;
        var (at, weight) = GradeNodes.Panel;
        var count = Math.Clamp((int)Math.Ceiling((to - from) / (PanelInSigmas * curve.Grid.Window.Sigma)), 1, MostPanels);
        var width = (to - from) / count;
        var length = (count * at.Length + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count;
        (_nodes, _shares, _graded) = (new double[length], new double[length], new double[length]);
        // What fills the last vector up has no share.
        Array.Fill(_nodes, to);
        for (var i = 0; i < count * at.Length; i++)
        {
            var (panel, k) = (i / at.Length, i % at.Length);
            _nodes[i] = from + (panel + at[k]) * width;
            _shares[i] = width * weight[k];
            _graded[i] = _shares[i] * curve.At(_nodes[i]);
        }
    }

    /// <summary>Room for <see cref="Grow"/>; none where it does not help.</summary>
    public int GrowthLength(double tau) => _weibull && _nodes[^1] - _nodes[0] < FarthestGrowth * tau ? _nodes.Length : 0;

    /// <summary>e^(x/τ) on the nodes, over that on the first.</summary>
    public void Grow(double tau, Span<double> growth)
    {
        for (var i = 0; i < growth.Length; i += Vector<double>.Count)
            Vector.Exp((new Vector<double>(_nodes, i) - new Vector<double>(_nodes[0])) * (1 / tau)).CopyTo(growth[i..]);
    }

    /// <summary>The logarithm of the mean, with its derivatives by μ and s.</summary>
    /// <param name="log">The logarithm of the chance of the whole stretch.</param>
    /// <param name="sliver">Nodes with less than this of it, as a logarithm, are passed over.</param>
    /// <param name="growth">From <see cref="Grow"/>, or nothing.</param>
    /// <returns>False where the nodes see next to nothing of the density.</returns>
    public bool TryLogMean(double centre, double tau, double log, double sliver, ReadOnlySpan<double> growth, out RowLogLikelihood mean)
    {
        var (plain, graded) = (new Sums(), new Sums());
        var (one, middle, inverse) = (Vector<double>.One, new Vector<double>(centre), new Vector<double>(1 / tau));
        var scale = new Vector<double>(-log - Math.Log(tau) - (_weibull ? 0 : NormalTail.LogRootTwoPi));
        var grown = new Vector<double>(growth.IsEmpty ? 1 : Math.Exp((_nodes[0] - centre) / tau));
        for (var i = 0; i < _nodes.Length; i += Vector<double>.Count)
        {
            // The density of x is exp(h(z)) / τ; g is h′ and k is h″ + h′².
            var z = (new Vector<double>(_nodes, i) - middle) * inverse;
            Vector<double> height,
                g,
                k;
            if (_weibull)
            {
                var e = growth.IsEmpty ? Vector.Exp(z) : grown * new Vector<double>(growth[i..]);
                height = z - e + scale;
                g = one - e;
                k = Vector.FusedMultiplyAdd(g, g, -e);
            }
            else
            {
                height = Vector.FusedMultiplyAdd(z * z, new Vector<double>(-0.5), scale);
                g = -z;
                k = Vector.FusedMultiplyAdd(z, z, -one);
            }
            // Past its peak it only falls.
            if (height[0] < sliver && z[0] > 1)
                break;
            if (height[0] < sliver && height[Vector<double>.Count - 1] < sliver)
                continue;
            var density = Vector.Exp(height);
            plain.Add(density * new Vector<double>(_shares, i), z, g, k);
            graded.Add(density * new Vector<double>(_graded, i), z, g, k);
        }
        mean = default;
        var (below, above) = (plain.ToMixture(tau, out var seen), graded.ToMixture(tau, out _));
        if (!(seen > LeastSeen))
            return false;
        var (a, b) = (above.ToRow(0), below.ToRow(0));
        mean = new(a.Value - b.Value, a.E - b.E, a.S - b.S, a.EE - b.EE, a.ES - b.ES, a.SS - b.SS);
        return true;
    }

    private struct Sums
    {
        private Vector<double> _s;
        private Vector<double> _sg;
        private Vector<double> _sk;
        private Vector<double> _szg;
        private Vector<double> _szk;
        private Vector<double> _szzk;

        public void Add(Vector<double> f, Vector<double> z, Vector<double> g, Vector<double> k)
        {
            var (fg, fk) = (f * g, f * k);
            var fzk = fk * z;
            _s += f;
            _sg += fg;
            _sk += fk;
            _szg = Vector.FusedMultiplyAdd(fg, z, _szg);
            _szk += fzk;
            _szzk = Vector.FusedMultiplyAdd(fzk, z, _szzk);
        }

        public readonly RowMixture ToMixture(double tau, out double seen)
        {
            seen = Vector.Sum(_s);
            var mixture = new RowMixture();
            mixture.AddDensities(seen, Vector.Sum(_sg), Vector.Sum(_sk), Vector.Sum(_szg), Vector.Sum(_szk), Vector.Sum(_szzk), tau);
            return mixture;
        }
    }
}
