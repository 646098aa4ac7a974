using System.Numerics;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>One block of rows: the derivatives each row hands on to every column, weighted.</summary>
internal sealed class LikelihoodBlock(LifeDistribution distribution, LifetimeFitRows rows, double[] parameters, int size)
{
    private readonly double[] _centre = new double[size];
    private readonly double[] _loading = new double[size];
    private readonly double[] _e = new double[size];
    private readonly double[] _ee = new double[size];
    private readonly double[] _es = new double[size];
    private readonly double[] _product = new double[size];
    private readonly double _scale = Math.Exp(parameters[^1]);
    private int _length;

    public ReadOnlySpan<double> E => _e.AsSpan(0, _length);

    public ReadOnlySpan<double> EE => _ee.AsSpan(0, _length);

    public ReadOnlySpan<double> ES => _es.AsSpan(0, _length);

    /// <summary>How much of δ each row takes on; empty where all take on the whole.</summary>
    public ReadOnlySpan<double> Loading => rows.Places is null ? default : _loading.AsSpan(0, _length);

    public ReadOnlySpan<double> WeightByCurvature(ReadOnlySpan<double> column)
    {
        VectorSums.Multiply(EE, column, _product);
        return _product.AsSpan(0, _length);
    }

    /// <summary>Computes the block's rows; gives their log-likelihood and its first and second derivative by s.</summary>
    public (double Value, double Slope, double Bend) Fill(int start, int count)
    {
        _length = count;
        Centres(start);
        var fast = rows.Places is null ? Math.Clamp(rows.Simple - start, 0, count) : 0;
        fast -= fast % Vector<double>.Count;
        var sums = fast > 0 ? FillSimple(start, fast) : default;
        for (var i = fast; i < count; i++)
        {
            var row = start + i;
            var tau = rows.Places is { } places ? _scale * places[row].Sigma : _scale;
            var terms =
                distribution == LifeDistribution.Weibull
                    ? WeibullLikelihood.Evaluate(rows.Ends[row], rows.LogLower[row], rows.LogUpper[row], _centre[i], tau)
                    : LogNormalLikelihood.Evaluate(rows.Ends[row], rows.LogLower[row], rows.LogUpper[row], _centre[i], tau);
            var weight = rows.Weights[row];
            (_e[i], _ee[i], _es[i]) = (weight * terms.E, weight * terms.EE, weight * terms.ES);
            sums = (sums.Value + weight * terms.Value, sums.Slope + weight * terms.S, sums.Bend + weight * terms.SS);
        }
        return sums;
    }

    /// <summary>
    /// For least squares on ln T less its place: E is weight · y and EE the weight, both over σ². Gives Σ of the weighted y² and of the weights.
    /// </summary>
    public (double Squares, double Weights) FillLeastSquares(int start, int count)
    {
        _length = count;
        var (squares, weights) = (0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            var row = start + i;
            // What is taken back of a spell entered late is no observation to draw a line through.
            var weight = Math.Max(0, rows.Weights[row]);
            var (place, y) = (rows.Places?[row] ?? RowLocationScale.Plain, rows.LogMidpoint(row));
            _loading[i] = place.Loading;
            _ee[i] = weight / (place.Sigma * place.Sigma);
            _e[i] = _ee[i] * (y - place.Offset);
            _es[i] = 0;
            squares += _e[i] * (y - place.Offset);
            weights += weight;
        }
        return (squares, weights);
    }

    private void Centres(int start)
    {
        if (rows.Places is { } places)
        {
            for (var i = 0; i < _length; i++)
            {
                _loading[i] = places[start + i].Loading;
                _centre[i] = places[start + i].Offset + _loading[i] * parameters[0];
            }
        }
        else
        {
            Array.Fill(_centre, parameters[0], 0, _length);
        }
        for (var j = 0; j < rows.Columns.Length; j++)
            VectorSums.AddScaled(_centre, rows.Columns[j].AsSpan(start, _length), parameters[j + 1]);
    }

    // Several rows at once, of those that ended at a known time (d = 1) or went on (d = 0).
    private (double Value, double Slope, double Bend) FillSimple(int start, int count)
    {
        var (value, slope, bend) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
        var (inverse, logScale) = (new Vector<double>(1 / _scale), new Vector<double>(parameters[^1]));
        Span<double> ended = stackalloc double[Vector<double>.Count];
        for (var i = 0; i < count; i += ended.Length)
        {
            for (var k = 0; k < ended.Length; k++)
                ended[k] = rows.Ends[start + i + k] == SpellEnd.At ? 1 : 0;
            var d = new Vector<double>(ended);
            var y = new Vector<double>(rows.LogLower, start + i);
            var weight = new Vector<double>(rows.Weights, start + i);
            var z = (y - new Vector<double>(_centre, i)) * inverse;
            var (height, g1, g2) = distribution == LifeDistribution.Weibull ? OfWeibull(d, z) : OfLogNormal(d, z);
            var tilt = g1 + z * g2;
            value += weight * (height - d * (logScale + y));
            slope -= weight * (z * g1 + d);
            bend += weight * z * tilt;
            var scaled = weight * inverse;
            (-g1 * scaled).CopyTo(_e, i);
            (g2 * scaled * inverse).CopyTo(_ee, i);
            (tilt * scaled).CopyTo(_es, i);
        }
        return (Vector.Sum(value), Vector.Sum(slope), Vector.Sum(bend));
    }

    // ln of density or survival by z, with its first and second derivative.
    private static (Vector<double> Value, Vector<double> First, Vector<double> Second) OfWeibull(Vector<double> d, Vector<double> z)
    {
        var exp = Vector.Exp(z);
        return (d * z - exp, d - exp, -exp);
    }

    private static (Vector<double> Value, Vector<double> First, Vector<double> Second) OfLogNormal(Vector<double> d, Vector<double> z)
    {
        var ended = Vector.Equals(d, Vector<double>.One);
        var (logQ, hazard) = NormalTail.LogQAndHazard(z);
        return (
            Vector.ConditionalSelect(ended, -0.5 * z * z - new Vector<double>(NormalTail.LogRootTwoPi), logQ),
            Vector.ConditionalSelect(ended, -z, -hazard),
            Vector.ConditionalSelect(ended, -Vector<double>.One, -hazard * (hazard - z))
        );
    }
}
