using System.Runtime.InteropServices;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>One client's rows as a function of the client's effect b: where it peaks, and the integral about that peak.</summary>
/// <remarks>
/// The trapezoid rule from the peak outward, until nothing more is added. On a smooth function that falls away on both sides its error falls
/// exponentially with the step (Trefethen and Weideman, SIAM Review 56, 2014), whether or not the function looks like a normal density: with
/// rows that ended sharply, or only went on, it does not, and rules that take it for one (Gauss–Hermite) are then wrong by any amount.
/// </remarks>
internal sealed class EffectQuadrature(LifeDistribution distribution, LifetimeFitRows rows, double clientSpread)
{
    // What has fallen by e⁻²⁵ from the peak is not added any more. As a function of b the posterior has one peak and falls ever faster.
    private const double Depth = 25;

    // No rows and parameters that mean anything lead so low, or to so many nodes; there is then no integral.
    private const double Lowest = -1e12;
    private const int MostNodes = 100_000;

    private readonly List<double> _nodes = [];
    private readonly List<double> _shares = [];
    private RowLogLikelihood[] _terms = new RowLogLikelihood[256];
    private double[] _centre = new double[16];
    private int _first;
    private int _count;
    private double _scale;

    /// <summary>The nodes b, their share of the posterior, and the logarithm of the integral.</summary>
    public ReadOnlySpan<double> Nodes => CollectionsMarshal.AsSpan(_nodes);

    public ReadOnlySpan<double> Shares => CollectionsMarshal.AsSpan(_shares);

    public double LogIntegral { get; private set; }

    public double RowLoading(int i) => rows.Places is { } places ? places[_first + i].Loading : 1;

    /// <summary>The terms of the client's i-th row at a node, unweighted.</summary>
    public ref readonly RowLogLikelihood Terms(int node, int i) => ref _terms[node * _count + i];

    /// <summary>Finds peak and nodes for the client of these rows at these parameters.</summary>
    public void MoveToClient(double[] parameters, int start, int end)
    {
        (_first, _count, _scale) = (start, end - start, Math.Exp(parameters[^1]));
        if (_centre.Length < _count)
            _centre = new double[2 * _count];
        for (var i = 0; i < _count; i++)
        {
            _centre[i] = RowLoading(i) * parameters[0] + (rows.Places is { } places ? places[start + i].Offset : 0);
            for (var j = 0; j < rows.Columns.Length; j++)
                _centre[i] += parameters[j + 1] * rows.Columns[j][start + i];
        }
        var (peak, width) = Peak();
        var step = Step(width);
        _nodes.Clear();
        _shares.Clear();
        LogIntegral = double.NegativeInfinity;
        if (!TryAdd(peak, Lowest))
            return;
        var top = _shares[0];
        for (var k = 1; TryAdd(peak + k * step, top - Depth); k++) { }
        for (var k = -1; TryAdd(peak + k * step, top - Depth); k--) { }
        if (_nodes.Count >= MostNodes)
            return;
        var sum = 0.0;
        var shares = CollectionsMarshal.AsSpan(_shares);
        foreach (ref var share in shares)
            sum += share = Math.Exp(share - top);
        foreach (ref var share in shares)
            share /= sum;
        LogIntegral = top + Math.Log(sum * step / clientSpread) - NormalTail.LogRootTwoPi;
    }

    // A node where the posterior stands at least so high; its share is the height at first.
    private bool TryAdd(double effect, double floor)
    {
        if (_nodes.Count >= MostNodes)
            return false;
        var at = _nodes.Count * _count;
        if (_terms.Length < at + _count)
            Array.Resize(ref _terms, 2 * (at + _count));
        var height = -effect * effect / (2 * clientSpread * clientSpread);
        for (var i = 0; i < _count; i++)
        {
            ref var terms = ref _terms[at + i];
            terms = EvaluateRow(i, effect);
            height += rows.Weights[_first + i] * terms.Value;
        }
        // Not a number: a spell entered late that could not have lasted until it was.
        if (!(height >= floor))
            return false;
        _nodes.Add(effect);
        _shares.Add(height);
        return true;
    }

    // Short beside the posterior's own width, and beside the distance over which a row's likelihood turns.
    private double Step(double width)
    {
        var turns = 0.0;
        for (var i = 0; i < _count; i++)
        {
            var rate = RowLoading(i) / Tau(i);
            turns = Math.Max(turns, rate * rate);
        }
        return 1 / Math.Sqrt(StepsPerTurn * turns + 1 / (width * width));
    }

    // By brute force over rows of every kind and noise from a twentieth to ten times of what clients differ by, the logarithm of the integral is
    // then known to 1e-9.
    private const double StepsPerTurn = 6;

    private double Tau(int i) => rows.Places is { } places ? _scale * places[_first + i].Sigma : _scale;

    private RowLogLikelihood EvaluateRow(int i, double effect)
    {
        var row = _first + i;
        var (tau, eta) = (Tau(i), _centre[i] + RowLoading(i) * effect);
        if (rows.DudShares is { } duds && duds[row] > 0)
            return DudLikelihood.Evaluate(
                distribution,
                rows.Ends[row],
                rows.LogLower[row],
                rows.LogUpper[row],
                eta,
                tau,
                duds[row],
                rows.DudDrop
            );
        return distribution == LifeDistribution.Weibull
            ? WeibullLikelihood.Evaluate(rows.Ends[row], rows.LogLower[row], rows.LogUpper[row], eta, tau)
            : LogNormalLikelihood.Evaluate(rows.Ends[row], rows.LogLower[row], rows.LogUpper[row], eta, tau);
    }

    // Concave: where the slope is known, the peak is on its upper side. Newton's steps, halved between the known sides where they lead nowhere.
    private (double Peak, double Width) Peak()
    {
        var (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
        var (effect, last, width) = (0.0, 0.0, clientSpread);
        for (var step = 0; step < 200; step++)
        {
            var (slope, bend) = Slope(effect);
            if (slope > 0)
                low = effect;
            else
                high = effect;
            width = 1 / Math.Sqrt(bend);
            var change = Math.Clamp(slope / bend, -2 * clientSpread, 2 * clientSpread);
            if (Math.Abs(change) < 0.01 * width)
                break;
            // Far out on a steep side Newton's steps are all alike: short ones grow until the peak lies between two.
            if (change * last > 0 && Math.Abs(change) > 0.5 * Math.Abs(last))
                change = Math.CopySign(Math.Max(Math.Abs(change), 2 * Math.Abs(last)), change);
            if (!(effect + change > low && effect + change < high))
                change = (low + high) / 2 - effect;
            effect += last = change;
        }
        return (effect, width);
    }

    // The slope, and the bend downward.
    private (double Slope, double Bend) Slope(double effect)
    {
        var slope = -effect / (clientSpread * clientSpread);
        var bend = 1 / (clientSpread * clientSpread);
        for (var i = 0; i < _count; i++)
        {
            var terms = EvaluateRow(i, effect);
            var (loading, weight) = (RowLoading(i), rows.Weights[_first + i]);
            slope += weight * loading * terms.E;
            bend -= weight * loading * loading * terms.EE;
        }
        // A row that may be a dud's has more than one top: where it bends the wrong way, the prior's bend will do.
        if (rows.DudShares is not null && bend < 0.2 / (clientSpread * clientSpread))
            bend = 1 / (clientSpread * clientSpread);
        // So early that no spell could have lasted as long as it did: further up.
        return double.IsFinite(slope) && double.IsFinite(bend)
            ? (slope, bend)
            : (double.PositiveInfinity, 1 / (clientSpread * clientSpread));
    }
}
