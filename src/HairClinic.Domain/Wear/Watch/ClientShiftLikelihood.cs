using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Watch;

/// <summary>
/// One client's rows, the client's effect integrated out, while those from some place of the stream on are shifted in ln T:
/// the log-likelihood with its derivatives by δ, β and the shift, at the fit's scale.
/// </summary>
/// <remarks>
/// Several units of one client share the effect: each is not counted as a witness of its own. At one scale all of it is concave in δ, β
/// and the shift, so Newton's steps are safe.
/// </remarks>
internal sealed class ClientShiftLikelihood
{
    private readonly WatchedFit _fit;
    private readonly GaussHermite _rule = GaussHermite.Client;
    private readonly double[] _nodes;
    private readonly double[] _shares;
    private readonly double[][] _scores;
    private readonly double[] _mean;
    private readonly double[] _design;
    private double[] _centre = new double[16];
    private double[] _tau = new double[16];
    private IReadOnlyList<WatchedRow> _rows = [];
    private double _peak;

    public ClientShiftLikelihood(WatchedFit fit)
    {
        _fit = fit;
        var count = fit.ClientSpread > 0 ? _rule.Nodes.Length : 1;
        (_nodes, _shares) = (new double[count], new double[count]);
        Size = fit.Parameters.Count;
        _scores = [.. Enumerable.Range(0, count).Select(_ => new double[Size])];
        (_mean, _design) = (new double[Size], new double[Size]);
        (Gradient, Hessian) = (new double[Size], new double[Size * Size]);
    }

    /// <summary>δ, β in order, then the shift.</summary>
    public int Size { get; }

    public double Value { get; private set; }

    public double[] Gradient { get; }

    /// <summary>Row by row.</summary>
    public double[] Hessian { get; }

    public void MoveToClient(IReadOnlyList<WatchedRow> rows) => (_rows, _peak) = (rows, 0);

    /// <param name="first">The first place of the stream that is shifted.</param>
    /// <param name="aside">How far δ and β are from the fit's.</param>
    public void Evaluate(int first, double shift, ReadOnlySpan<double> aside)
    {
        Lay(first, shift, aside);
        PlaceNodes();
        Array.Clear(Gradient);
        Array.Clear(Hessian);
        foreach (var score in _scores)
            Array.Clear(score);
        for (var i = 0; i < _rows.Count; i++)
            AddRow(i, _rows[i].Order >= first);
        AddSpread();
    }

    private void Lay(int first, double shift, ReadOnlySpan<double> aside)
    {
        var parameters = _fit.Parameters;
        if (_centre.Length < _rows.Count)
            (_centre, _tau) = (new double[2 * _rows.Count], new double[2 * _rows.Count]);
        for (var i = 0; i < _rows.Count; i++)
        {
            var row = _rows[i];
            _tau[i] = row.Place.Sigma * Math.Exp(parameters[^1]);
            _centre[i] = row.Place.Offset + row.Place.Loading * (parameters[0] + aside[0]) + (row.Order >= first ? shift : 0);
            for (var j = 0; j < row.Covariates.Count; j++)
                _centre[i] += (parameters[j + 1] + aside[j + 1]) * row.Covariates[j];
        }
    }

    private RowLogLikelihood RowAt(int i, double effect) =>
        _rows[i].Evaluate(_fit.Distribution, _centre[i] + _rows[i].Place.Loading * effect, _tau[i]);

    private void PlaceNodes()
    {
        if (_nodes.Length == 1)
        {
            (_nodes[0], _shares[0], Value) = (0, 1, Height(0));
            return;
        }
        var spread = _fit.ClientSpread;
        var (peak, width) = Peak();
        var top = double.NegativeInfinity;
        for (var k = 0; k < _nodes.Length; k++)
        {
            _nodes[k] = peak + Math.Sqrt(2) * width * _rule.Nodes[k];
            _shares[k] = _rule.LogWeights[k] + _rule.Nodes[k] * _rule.Nodes[k] + Height(_nodes[k]);
            top = Math.Max(top, _shares[k]);
        }
        var sum = 0.0;
        for (var k = 0; k < _shares.Length; k++)
            sum += _shares[k] = Math.Exp(_shares[k] - top);
        for (var k = 0; k < _shares.Length; k++)
            _shares[k] /= sum;
        Value = top + Math.Log(sum * Math.Sqrt(2) * width / spread) - NormalTail.LogRootTwoPi;
    }

    private double Height(double effect)
    {
        var spread = _fit.ClientSpread;
        var height = spread > 0 ? -effect * effect / (2 * spread * spread) : 0;
        for (var i = 0; i < _rows.Count; i++)
            height += RowAt(i, effect).Value;
        return height;
    }

    // Newton's steps, kept short. Nodes are good enough a little beside the peak too.
    private (double Peak, double Width) Peak()
    {
        var precision = 1 / (_fit.ClientSpread * _fit.ClientSpread);
        var bend = 0.0;
        for (var step = 0; step < 50; step++)
        {
            var slope = -_peak * precision;
            bend = precision;
            for (var i = 0; i < _rows.Count; i++)
            {
                var terms = RowAt(i, _peak);
                var loading = _rows[i].Place.Loading;
                slope += loading * terms.E;
                // Evidence that is a mixture may bend the other way for a stretch.
                bend += Math.Max(0, -loading * loading * terms.EE);
            }
            var change = Math.Clamp(slope / bend, -2 * _fit.ClientSpread, 2 * _fit.ClientSpread);
            _peak += change;
            if (!(Math.Abs(change) > 1e-6 * _fit.ClientSpread))
                break;
        }
        return (_peak, 1 / Math.Sqrt(bend));
    }

    private void AddRow(int i, bool shifted)
    {
        var row = _rows[i];
        _design[0] = row.Place.Loading;
        for (var j = 0; j < row.Covariates.Count; j++)
            _design[j + 1] = row.Covariates[j];
        _design[^1] = shifted ? 1 : 0;
        var bend = 0.0;
        for (var k = 0; k < _nodes.Length; k++)
        {
            if (_shares[k] == 0)
                continue;
            var terms = RowAt(i, _nodes[k]);
            for (var j = 0; j < Size; j++)
                _scores[k][j] += terms.E * _design[j];
            bend += _shares[k] * terms.EE;
        }
        for (var j = 0; j < Size; j++)
        {
            for (var l = 0; l < Size; l++)
                Hessian[j * Size + l] += bend * _design[j] * _design[l];
        }
    }

    // The posterior mean of the rows' slopes, and their posterior covariance.
    private void AddSpread()
    {
        for (var k = 0; k < _shares.Length; k++)
        {
            for (var j = 0; j < Size; j++)
                Gradient[j] += _shares[k] * _scores[k][j];
        }
        for (var k = 0; k < _shares.Length; k++)
        {
            for (var j = 0; j < Size; j++)
                _mean[j] = _scores[k][j] - Gradient[j];
            for (var j = 0; j < Size; j++)
            {
                for (var l = 0; l < Size; l++)
                    Hessian[j * Size + l] += _shares[k] * _mean[j] * _mean[l];
            }
        }
    }
}
