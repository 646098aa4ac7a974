namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>The marginal log-likelihood: each client's effect integrated out about its own peak.</summary>
/// <remarks>
/// The gradient is the posterior mean of the rows' gradients; the Hessian the posterior mean of their Hessians and
/// the posterior covariance of their gradients. Clients are taken in fixed chunks: the same sums every time.
/// </remarks>
internal sealed class MarginalLikelihood(LifeDistribution distribution, LifetimeFitRows rows, double clientSpread)
{
    private const int Chunk = 64;

    public LogLikelihoodSums Evaluate(double[] parameters)
    {
        var clients = rows.ClientStarts.Length - 1;
        var chunks = new LogLikelihoodSums[(clients + Chunk - 1) / Chunk];
        Parallel.For(0, chunks.Length, c => chunks[c] = Sum(parameters, c * Chunk, Math.Min(clients, (c + 1) * Chunk)));
        var total = new LogLikelihoodSums(parameters.Length);
        foreach (var chunk in chunks)
            total.Add(chunk);
        total.SymmetrizeHessian();
        return total;
    }

    private LogLikelihoodSums Sum(double[] parameters, int from, int to)
    {
        var sums = new LogLikelihoodSums(parameters.Length);
        var effect = new EffectQuadrature(distribution, rows, clientSpread);
        var scores = new double[effect.Nodes.Length * parameters.Length];
        var design = new double[parameters.Length - 1];
        var mean = new double[parameters.Length];
        for (var client = from; client < to; client++)
        {
            var (first, end) = (rows.ClientStarts[client], rows.ClientStarts[client + 1]);
            effect.MoveToClient(parameters, first, end);
            sums.Value += effect.LogIntegral;
            Array.Clear(scores);
            for (var i = 0; i < end - first; i++)
            {
                design[0] = effect.RowLoading(i);
                for (var j = 0; j < rows.Columns.Length; j++)
                    design[j + 1] = rows.Columns[j][first + i];
                AddRow(effect, i, rows.Weights[first + i], design, scores, sums);
            }
            AddSpread(effect.Shares, scores, mean, sums);
        }
        return sums;
    }

    private static void AddRow(EffectQuadrature effect, int i, double weight, double[] design, double[] scores, LogLikelihoodSums sums)
    {
        var last = design.Length;
        var (ee, es) = (0.0, 0.0);
        for (var k = 0; k < effect.Nodes.Length; k++)
        {
            var terms = effect.EvaluateRow(i, effect.Nodes[k]);
            var share = weight * effect.Shares[k];
            if (share == 0)
                continue;
            var score = scores.AsSpan(k * sums.Size, sums.Size);
            for (var j = 0; j < last; j++)
                score[j] += weight * terms.E * design[j];
            score[last] += weight * terms.S;
            ee += share * terms.EE;
            es += share * terms.ES;
            sums.Hessian[last * sums.Size + last] += share * terms.SS;
        }
        for (var j = 0; j < last; j++)
        {
            sums.Hessian[last * sums.Size + j] += es * design[j];
            for (var l = 0; l <= j; l++)
                sums.Hessian[j * sums.Size + l] += ee * design[j] * design[l];
        }
    }

    private static void AddSpread(double[] shares, double[] scores, double[] mean, LogLikelihoodSums sums)
    {
        Array.Clear(mean);
        for (var k = 0; k < shares.Length; k++)
        {
            for (var j = 0; j < mean.Length; j++)
                mean[j] += shares[k] * scores[k * mean.Length + j];
        }
        for (var j = 0; j < mean.Length; j++)
        {
            sums.Gradient[j] += mean[j];
            for (var l = 0; l <= j; l++)
            {
                var covariance = 0.0;
                for (var k = 0; k < shares.Length; k++)
                    covariance += shares[k] * (scores[k * mean.Length + j] - mean[j]) * (scores[k * mean.Length + l] - mean[l]);
                sums.Hessian[j * sums.Size + l] += covariance;
            }
        }
    }
}
