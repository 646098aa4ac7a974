namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What is believed of one client's δ + b, as places (per unit of loading) and their shares.</summary>
public sealed class LifeNodes
{
    private const int Unseen = 81;
    private const double Reach = 8;
    private static readonly double[] At = [.. Enumerable.Range(0, Unseen).Select(i => Reach * (2.0 * i / (Unseen - 1) - 1))];
    private static readonly double[] Bell = Normalised([.. At.Select(at => Math.Exp(-at * at / 2))]);

    private LifeNodes(double[] places, double[] shares, int own) => (Places, Shares, Own) = (places, shares, own);

    /// <summary>Spells of the client's own behind it.</summary>
    public int Own { get; }

    internal double[] Places { get; }

    internal double[] Shares { get; }

    /// <summary>A client of whom nothing was seen: the sum of two normal effects is normal.</summary>
    public static LifeNodes Of(LifePopulation population)
    {
        var spread = Math.Sqrt(population.ClientSpread * population.ClientSpread + population.PracticeVariance);
        return new([.. At.Select(at => population.PracticeMean + spread * at)], Bell, 0);
    }

    /// <param name="own">The client's own rows, laid out as one client's.</param>
    public static LifeNodes Of(LifePopulation population, LifeRows own)
    {
        if (own.Count == 0 || population.ClientSpread == 0)
            return Of(population);
        if (own.ClientStarts.Length != 2)
            throw new ArgumentException("The rows are not one client's.", nameof(own));
        if (own.Names.Length != population.Coefficients.Count)
            throw new ArgumentException("The rows have not the covariates of the fit.", nameof(own));
        var effect = new ClientEffect(population.Distribution, own, population.ClientSpread);
        var intercept = population.PracticeMean;
        for (var j = 0; j < own.Means.Length; j++)
            intercept += population.Coefficients[j] * own.Means[j];
        effect.Turn([intercept, .. population.Coefficients, population.LogScale], 0, own.Count);
        var rule = GaussHermite.Practice;
        var places = new double[effect.Nodes.Length * rule.Nodes.Length];
        var shares = new double[places.Length];
        var spread = Math.Sqrt(2 * population.PracticeVariance);
        for (var k = 0; k < effect.Nodes.Length; k++)
        {
            for (var j = 0; j < rule.Nodes.Length; j++)
            {
                var at = k * rule.Nodes.Length + j;
                places[at] = effect.Nodes[k] + population.PracticeMean + spread * rule.Nodes[j];
                shares[at] = effect.Shares[k] * Math.Exp(rule.LogWeights[j]);
            }
        }
        return new(places, Normalised(shares), own.Count);
    }

    /// <summary>The same belief on fewer places: Gauss's rule of its own moments, exact for smooth questions.</summary>
    /// <remarks>Lanczos' recursion on the shares gives the rule's matrix; its eigenvalues are the places.</remarks>
    public LifeNodes Few(int count = 5)
    {
        if (Places.Length <= count)
            return this;
        var matrix = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(count, count);
        var (before, current) = (new double[Places.Length], Array.ConvertAll(Shares, Math.Sqrt));
        var link = 0.0;
        for (var k = 0; k < count; k++)
        {
            var next = new double[Places.Length];
            for (var i = 0; i < next.Length; i++)
                matrix[k, k] += current[i] * current[i] * Places[i];
            for (var i = 0; i < next.Length; i++)
                next[i] = (Places[i] - matrix[k, k]) * current[i] - link * before[i];
            link = Math.Sqrt(next.Sum(x => x * x));
            // Fewer different places than asked for, or as good as one.
            if (k == count - 1 || link < 1e-12 * (1 + Math.Abs(matrix[k, k])))
            {
                matrix = matrix.SubMatrix(0, k + 1, 0, k + 1);
                break;
            }
            (matrix[k, k + 1], matrix[k + 1, k]) = (link, link);
            (before, current) = (current, Array.ConvertAll(next, x => x / link));
        }
        var rule = matrix.Evd(MathNet.Numerics.LinearAlgebra.Symmetricity.Symmetric);
        return new([.. rule.EigenValues.Select(value => value.Real)], Normalised([.. rule.EigenVectors.Row(0).Select(x => x * x)]), Own);
    }

    private static double[] Normalised(double[] shares)
    {
        var total = shares.Sum();
        for (var i = 0; i < shares.Length; i++)
            shares[i] /= total;
        return shares;
    }
}
