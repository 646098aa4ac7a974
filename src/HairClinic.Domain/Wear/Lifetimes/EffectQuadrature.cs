using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>One client's rows as a function of the client's effect b: where it peaks, and the quadrature about that peak.</summary>
internal sealed class EffectQuadrature(LifeDistribution distribution, LifetimeFitRows rows, double clientSpread)
{
    private readonly GaussHermite _rule = GaussHermite.Client;
    private double[] _centre = new double[16];
    private int _first;
    private int _count;
    private double _scale;

    /// <summary>The nodes b, their share of the posterior, and the logarithm of the integral.</summary>
    public double[] Nodes { get; } = new double[GaussHermite.Client.Nodes.Length];

    public double[] Shares { get; } = new double[GaussHermite.Client.Nodes.Length];

    public double LogIntegral { get; private set; }

    public double RowLoading(int i) => rows.Places is { } places ? places[_first + i].Loading : 1;

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
        var top = double.NegativeInfinity;
        for (var k = 0; k < Nodes.Length; k++)
        {
            Nodes[k] = peak + Math.Sqrt(2) * width * _rule.Nodes[k];
            Shares[k] = _rule.LogWeights[k] + _rule.Nodes[k] * _rule.Nodes[k] + Height(Nodes[k]);
            top = Math.Max(top, Shares[k]);
        }
        var sum = 0.0;
        for (var k = 0; k < Shares.Length; k++)
            sum += Shares[k] = Math.Exp(Shares[k] - top);
        for (var k = 0; k < Shares.Length; k++)
            Shares[k] /= sum;
        LogIntegral = top + Math.Log(sum * Math.Sqrt(2) * width / clientSpread) - NormalTail.LogRootTwoPi;
    }

    /// <summary>The terms of the client's i-th row at a value of b, unweighted.</summary>
    public RowLogLikelihood EvaluateRow(int i, double effect)
    {
        var row = _first + i;
        var tau = rows.Places is { } places ? _scale * places[row].Sigma : _scale;
        var eta = _centre[i] + RowLoading(i) * effect;
        if (rows.DudShares is { } duds && duds[row] > 0)
            return DudLikelihood.Evaluate(distribution, rows.Ends[row], rows.LogLower[row], rows.LogUpper[row], eta, tau, duds[row]);
        return distribution == LifeDistribution.Weibull
            ? WeibullLikelihood.Evaluate(rows.Ends[row], rows.LogLower[row], rows.LogUpper[row], eta, tau)
            : LogNormalLikelihood.Evaluate(rows.Ends[row], rows.LogLower[row], rows.LogUpper[row], eta, tau);
    }

    private double Height(double effect)
    {
        var height = -effect * effect / (2 * clientSpread * clientSpread);
        for (var i = 0; i < _count; i++)
            height += rows.Weights[_first + i] * EvaluateRow(i, effect).Value;
        return height;
    }

    // Concave, so Newton's steps, kept short, lead to the one peak. The rule is exact enough a little beside it too.
    private (double Peak, double Width) Peak()
    {
        var effect = 0.0;
        var bend = 0.0;
        for (var step = 0; step < 100; step++)
        {
            var slope = -effect / (clientSpread * clientSpread);
            bend = -1 / (clientSpread * clientSpread);
            for (var i = 0; i < _count; i++)
            {
                var terms = EvaluateRow(i, effect);
                var (loading, weight) = (RowLoading(i), rows.Weights[_first + i]);
                slope += weight * loading * terms.E;
                bend += weight * loading * loading * terms.EE;
            }
            // A row that may be a dud's has more than one top: where it bends the wrong way, the prior's bend will do.
            if (rows.DudShares is not null && bend > -0.2 / (clientSpread * clientSpread))
                bend = -1 / (clientSpread * clientSpread);
            var change = Math.Clamp(-slope / bend, -2 * clientSpread, 2 * clientSpread);
            effect += change;
            if (!(Math.Abs(change) > 1e-9 * clientSpread))
                break;
        }
        return (effect, 1 / Math.Sqrt(-bend));
    }
}
