using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>How likely rows are with all parameters integrated out: Laplace's approximation against the integral itself, summed over a grid.</summary>
public sealed class EvidenceTests
{
    [Theory]
    [InlineData(LifeDistribution.Weibull, 0.35)]
    [InlineData(LifeDistribution.Weibull, 0.05)]
    [InlineData(LifeDistribution.LogNormal, 0.35)]
    public void Evidence_is_the_integral_over_all_parameters(LifeDistribution distribution, double spread)
    {
        var dice = new Random(12);
        Spell[] spells =
        [
            .. Enumerable.Range(0, 60).Select(i => i % 4 == 0 ? Spell.RightCensored(150 + i) : Spell.Exact(180 + 90 * dice.NextDouble())),
        ];
        var window = WindowPrior.FromWindow(distribution, 182, 273);
        var column = new CovariateColumn("workshop", [.. spells.Select((_, i) => i % 2 == 0 ? -1.0 : 1)]);
        var rows = LifetimeFitRows.Create(spells, [column], [.. spells.Select(_ => window.Place)]);
        var priors = window.ToLifePriors([new NormalPrior(0, spread)]) with { ClientSpread = 0 };
        var fit = LifetimeFitter.Fit(distribution, rows, priors);

        Assert.Equal(Integral(new LogPosterior(distribution, rows, priors), fit), fit.LogEvidence + 1.5 * Math.Log(2 * Math.PI), 0.05);
    }

    // The column is balanced, so that the intercept is climbed as it is told. Six standard errors to either side of the peak, a fifth of one apart.
    private static double Integral(LogPosterior posterior, LifetimeFit fit)
    {
        const double Step = 0.2;
        var (steps, sum) = (Enumerable.Range(-30, 61).Select(i => i * Step).ToArray(), 0.0);
        foreach (var intercept in steps)
        {
            foreach (var effect in steps)
            {
                foreach (var scale in steps)
                {
                    var height = posterior.Evaluate(
                        [
                            fit.Coefficients[0] + intercept * fit.StdError(0),
                            fit.Coefficients[1] + effect * fit.StdError(1),
                            fit.LogScale + scale * fit.StdError(2),
                        ],
                        new double[3],
                        new double[9]
                    );
                    sum += Math.Exp(height - fit.LogPosterior);
                }
            }
        }
        return fit.LogPosterior + Math.Log(sum * Math.Pow(Step, 3) * fit.StdError(0) * fit.StdError(1) * fit.StdError(2));
    }
}
