namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>The distribution of one client's δ + b, as nodes (per unit of loading) and their shares.</summary>
public sealed class ClientEffectNodes
{
    private const int Unseen = 81;
    private const double Reach = 8;
    private static readonly double[] At = [.. Enumerable.Range(0, Unseen).Select(i => Reach * (2.0 * i / (Unseen - 1) - 1))];
    private static readonly double[] Bell = Normalised([.. At.Select(at => Math.Exp(-at * at / 2))]);

    private ClientEffectNodes(double[] nodes, double[] shares, int own) => (Nodes, Shares, Own) = (nodes, shares, own);

    /// <summary>Spells of the client's own behind it.</summary>
    public int Own { get; }

    internal double[] Nodes { get; }

    internal double[] Shares { get; }

    /// <summary>A client of whom nothing was seen: the sum of two normal effects is normal.</summary>
    public static ClientEffectNodes For(PopulationParameters population)
    {
        var spread = Math.Sqrt(population.ClientSpread * population.ClientSpread + population.PracticeVariance);
        return new([.. At.Select(at => population.PracticeMean + spread * at)], Bell, 0);
    }

    /// <param name="own">The client's own rows, laid out as one client's.</param>
    public static ClientEffectNodes For(PopulationParameters population, LifetimeFitRows own)
    {
        if (own.Count == 0 || population.ClientSpread == 0)
            return For(population);
        if (own.ClientStarts.Length != 2)
            throw new ArgumentException("The rows are not one client's.", nameof(own));
        if (own.Names.Length != population.Coefficients.Count)
            throw new ArgumentException("The rows have not the covariates of the fit.", nameof(own));
        var effect = new EffectQuadrature(population.Distribution, own, population.ClientSpread);
        var intercept = population.PracticeMean;
        for (var j = 0; j < own.Means.Length; j++)
            intercept += population.Coefficients[j] * own.Means[j];
        effect.MoveToClient([intercept, .. population.Coefficients, population.LogScale], 0, own.Length);
        if (population.PracticeVariance == 0)
            return new(
                Array.ConvertAll(effect.Nodes.ToArray(), node => node + population.PracticeMean),
                Normalised([.. effect.Shares]),
                own.Count
            );
        var rule = GaussHermite.Practice;
        var nodes = new double[effect.Nodes.Length * rule.Nodes.Length];
        var shares = new double[nodes.Length];
        var spread = Math.Sqrt(2 * population.PracticeVariance);
        for (var k = 0; k < effect.Nodes.Length; k++)
        {
            for (var j = 0; j < rule.Nodes.Length; j++)
            {
                var at = k * rule.Nodes.Length + j;
                nodes[at] = effect.Nodes[k] + population.PracticeMean + spread * rule.Nodes[j];
                shares[at] = effect.Shares[k] * Math.Exp(rule.LogWeights[j]);
            }
        }
        return new(nodes, Normalised(shares), own.Count);
    }

    /// <summary>The same distribution on fewer nodes: Gauss's rule of its own moments, exact for smooth questions.</summary>
    public ClientEffectNodes Reduced(int count = 5)
    {
        if (Nodes.Length <= count)
            return this;
        var (nodes, shares) = GaussQuadrature.OfDistribution(Nodes, Shares, count);
        return new(nodes, Normalised(shares), Own);
    }

    internal (double Mean, double Variance) Moments()
    {
        var (mean, variance) = (VectorSums.Dot(Nodes, Shares), 0.0);
        for (var k = 0; k < Nodes.Length; k++)
            variance += Shares[k] * (Nodes[k] - mean) * (Nodes[k] - mean);
        return (mean, variance);
    }

    private static double[] Normalised(double[] shares)
    {
        var total = shares.Sum();
        for (var i = 0; i < shares.Length; i++)
            shares[i] /= total;
        return shares;
    }
}
