namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>One client's share in gradient and Hessian: the scores at each node of the client's effect, their mean and covariance.</summary>
internal sealed class ClientScores(LifetimeFitRows rows, int size)
{
    private readonly double[] _design = new double[size - 1];
    private double[] _slopes = [];
    private double[] _weighted = [];

    // A parameter after another, for each the score at every node.
    private double[] _scores = [];

    public void Add(EffectQuadrature effect, int first, int count, LogLikelihoodSums sums)
    {
        var nodes = effect.Nodes.Length;
        if (_slopes.Length < nodes)
            (_slopes, _weighted, _scores) = (new double[2 * nodes], new double[2 * nodes], new double[2 * nodes * size]);
        Array.Clear(_scores, 0, nodes * size);
        for (var i = 0; i < count; i++)
        {
            _design[0] = effect.RowLoading(i);
            for (var j = 0; j < rows.Columns.Length; j++)
                _design[j + 1] = rows.Columns[j][first + i];
            AddRow(effect, i, rows.Weights[first + i], sums);
        }
        AddSpread(effect.Shares, sums);
    }

    private Span<double> Score(int parameter, int nodes) => _scores.AsSpan(parameter * nodes, nodes);

    private void AddRow(EffectQuadrature effect, int i, double weight, LogLikelihoodSums sums)
    {
        var (last, nodes) = (_design.Length, effect.Nodes.Length);
        var (ee, es, ss) = (0.0, 0.0, 0.0);
        var ofScale = Score(last, nodes);
        for (var k = 0; k < nodes; k++)
        {
            ref readonly var terms = ref effect.Terms(k, i);
            var share = weight * effect.Shares[k];
            _slopes[k] = terms.E;
            ofScale[k] += weight * terms.S;
            ee += share * terms.EE;
            es += share * terms.ES;
            ss += share * terms.SS;
        }
        sums.Hessian[last * sums.Size + last] += ss;
        for (var j = 0; j < last; j++)
        {
            if (_design[j] == 0)
                continue;
            VectorSums.AddScaled(Score(j, nodes), _slopes.AsSpan(0, nodes), weight * _design[j]);
            sums.Hessian[last * sums.Size + j] += es * _design[j];
            for (var l = 0; l <= j; l++)
                sums.Hessian[j * sums.Size + l] += ee * _design[j] * _design[l];
        }
    }

    private void AddSpread(ReadOnlySpan<double> shares, LogLikelihoodSums sums)
    {
        var weighted = _weighted.AsSpan(0, shares.Length);
        for (var j = 0; j < sums.Size; j++)
        {
            var score = Score(j, shares.Length);
            var mean = VectorSums.Dot(shares, score);
            sums.Gradient[j] += mean;
            foreach (ref var at in score)
                at -= mean;
            VectorSums.Multiply(shares, score, weighted);
            for (var l = 0; l <= j; l++)
                sums.Hessian[j * sums.Size + l] += VectorSums.Dot(weighted, Score(l, shares.Length));
        }
    }
}
