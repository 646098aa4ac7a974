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
        var scores = new ClientScores(rows, parameters.Length);
        for (var client = from; client < to; client++)
        {
            var (first, end) = (rows.ClientStarts[client], rows.ClientStarts[client + 1]);
            effect.MoveToClient(parameters, first, end);
            sums.Value += effect.LogIntegral;
            scores.Add(effect, first, end - first, sums);
        }
        return sums;
    }
}
