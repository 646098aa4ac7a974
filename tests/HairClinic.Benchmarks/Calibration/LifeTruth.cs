using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>What is true of one practice's holds or lives, drawn from the model's priors. Nobody in its salons sees it.</summary>
internal sealed class LifeTruth
{
    private readonly LifeDistribution _distribution;

    /// <param name="logScaleSpread">Of s over practices; the model's own prior unless another is given.</param>
    public LifeTruth(Dice dice, LifeDistribution distribution, IReadOnlyList<NormalPrior> priors, double? logScaleSpread = null)
    {
        _distribution = distribution;
        Practice = Factors.PracticeFactor * dice.Normal();
        Scale = Math.Exp((logScaleSpread ?? LifePriors.UsualLogScale.Spread) * dice.Normal());
        Coefficients = [.. priors.Select(prior => prior.Mean + prior.Spread * dice.Normal())];
    }

    /// <summary>δ, per unit of a window's width.</summary>
    public double Practice { get; }

    /// <summary>eˢ.</summary>
    public double Scale { get; }

    /// <summary>β.</summary>
    public double[] Coefficients { get; }

    // The same for every window of a distribution.
    private WindowPrior Factors => WindowPrior.FromWindow(_distribution, 1, 2);

    /// <summary>b, per unit of a window's width.</summary>
    public double Client(Dice dice) => Factors.ClientFactor * dice.Normal();

    /// <summary>One hold or life, in days.</summary>
    /// <param name="after">Known to have gone on until then; it ends later, by the curve of these covariates.</param>
    public double Days(Dice dice, Window window, double client, double[] covariates, double after = 0)
    {
        var row = window.In(_distribution);
        var centre = row.Centre + row.Width * (Practice + client);
        for (var j = 0; j < covariates.Length; j++)
            centre += Coefficients[j] * covariates[j];
        var (tau, z) = (Scale * row.Sigma, (Math.Log(after) - centre) / (Scale * row.Sigma));
        if (_distribution == LifeDistribution.Weibull)
            return Math.Exp(centre + tau * Math.Log(Math.Exp(z) + Math.Exp(dice.Noise(_distribution))));
        return after == 0
            ? Math.Exp(centre + tau * dice.Noise(_distribution))
            : Math.Max(after + 0.01, Math.Exp(centre - tau * Normal.InvCDF(0, 1, dice.Share() * Normal.CDF(0, 1, -z))));
    }
}
