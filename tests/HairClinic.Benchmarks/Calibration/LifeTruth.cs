using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>What is true of one practice's holds or lives, drawn from the model's priors. Nobody in its salons sees it.</summary>
internal sealed class LifeTruth
{
    private readonly LifeDistribution distribution;

    public LifeTruth(Dice dice, LifeDistribution distribution, IReadOnlyList<LifePrior> priors)
    {
        this.distribution = distribution;
        Practice = Factors.PracticeFactor * dice.Normal();
        Scale = Math.Exp(LifePriors.UsualLogScale.Spread * dice.Normal());
        Coefficients = [.. priors.Select(prior => prior.Mean + prior.Spread * dice.Normal())];
    }

    /// <summary>δ, per unit of a window's width.</summary>
    public double Practice { get; }

    /// <summary>eˢ.</summary>
    public double Scale { get; }

    /// <summary>β.</summary>
    public double[] Coefficients { get; }

    // The same for every window of a distribution.
    private WindowPrior Factors => WindowPrior.Of(distribution, 1, 2);

    /// <summary>b, per unit of a window's width.</summary>
    public double Client(Dice dice) => Factors.ClientFactor * dice.Normal();

    /// <summary>One hold or life, in days.</summary>
    public double Days(Dice dice, Window window, double client, double[] covariates)
    {
        var (row, shift) = (window.In(distribution), 0.0);
        for (var j = 0; j < covariates.Length; j++)
            shift += Coefficients[j] * covariates[j];
        return Math.Exp(row.Centre + row.Width * (Practice + client) + shift + Scale * row.Sigma * dice.Noise(distribution));
    }
}
