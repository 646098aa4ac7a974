using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>The integral over a client's effect against the same integral on a fine grid, written down from the definition.</summary>
public sealed class MarginalLikelihoodTests
{
    private const double Spread = 0.2;
    private static readonly Spell[] Own =
    [
        Spell.Exact(31),
        Spell.RightCensored(40),
        Spell.FromBounds(20, 28),
        Spell.LeftCensored(35, 2),
        Spell.Exact(44, 1.5),
    ];

    [Theory]
    [InlineData(LifeDistribution.Weibull, 1, 0.18)]
    [InlineData(LifeDistribution.Weibull, 5, 0.18)]
    [InlineData(LifeDistribution.Weibull, 5, 0.05)]
    [InlineData(LifeDistribution.LogNormal, 1, 0.2)]
    [InlineData(LifeDistribution.LogNormal, 5, 0.2)]
    [InlineData(LifeDistribution.LogNormal, 1, 0.02)]
    [InlineData(LifeDistribution.LogNormal, 5, 0.05)]
    [InlineData(LifeDistribution.Weibull, 1, 0.02)]
    [InlineData(LifeDistribution.Weibull, 5, 0.02)]
    [InlineData(LifeDistribution.Weibull, 1, 2)]
    public void It_agrees_with_a_fine_grid(LifeDistribution distribution, int count, double scale)
    {
        var spells = Own[..count];
        var rows = LifetimeFitRows.Create(spells, [], [], new int[count]);
        var target = new LogPosterior(distribution, rows, LifePriors.Flat(0) with { ClientSpread = Spread });

        var value = target.Evaluate([3.6, Math.Log(scale)], new double[2], new double[4]);

        Assert.Equal(ByGrid(distribution, spells, 3.6, scale), value, 1e-7);
    }

    // Sound at one day and nothing more is known: the likelihood is a step, as sharp as the scale is small, and the posterior no bell.
    [Theory]
    [InlineData(LifeDistribution.Weibull, 60, 0.2)]
    [InlineData(LifeDistribution.Weibull, 60, 0.02)]
    [InlineData(LifeDistribution.Weibull, 30, 0.005)]
    [InlineData(LifeDistribution.LogNormal, 60, 0.02)]
    public void It_agrees_where_a_bond_was_only_seen_to_be_sound(LifeDistribution distribution, double days, double scale)
    {
        Spell[] spells = [Spell.RightCensored(days)];
        var target = new LogPosterior(
            distribution,
            LifetimeFitRows.Create(spells, [], [], new int[1]),
            LifePriors.Flat(0) with
            {
                ClientSpread = Spread,
            }
        );

        Assert.Equal(ByGrid(distribution, spells, 3.6, scale), target.Evaluate([3.6, Math.Log(scale)], new double[2], new double[4]), 1e-7);
    }

    // No bond fits another: so far apart that eᶻ of one row is no number where that of another is 0.
    [Fact]
    public void It_has_a_value_where_bonds_of_one_client_contradict_each_other()
    {
        Spell[] spells = [Spell.Exact(10), Spell.FromBounds(10, 12), Spell.LeftCensored(9), Spell.RightCensored(60), Spell.Exact(60)];
        var rows = LifetimeFitRows.Create(spells, [], [], new int[5], [0, 5, 0, 30, 30]);
        foreach (var distribution in new[] { LifeDistribution.Weibull, LifeDistribution.LogNormal })
        {
            var (gradient, hessian) = (new double[2], new double[4]);
            var value = new LogPosterior(distribution, rows, LifePriors.Flat(0) with { ClientSpread = Spread }).Evaluate(
                [3.6, Math.Log(0.002)],
                gradient,
                hessian
            );

            Assert.InRange(value, -1e7, -1000);
            Assert.All(gradient.Concat(hessian), g => Assert.True(double.IsFinite(g)));
        }
    }

    [Fact]
    public void Clients_that_hardly_differ_are_as_good_as_none()
    {
        var clients = new[] { 0, 0, 1, 1, 2 };
        double At(LifetimeFitRows rows, double spread) =>
            new LogPosterior(LifeDistribution.Weibull, rows, LifePriors.Flat(0) with { ClientSpread = spread }).Evaluate(
                [3.6, -1.5],
                new double[2],
                new double[4]
            );

        Assert.Equal(At(LifetimeFitRows.Create(Own, []), 0), At(LifetimeFitRows.Create(Own, [], [], clients), 1e-5), 1e-6);
    }

    private static double ByGrid(LifeDistribution distribution, Spell[] spells, double centre, double scale)
    {
        const double Step = 2e-4;
        var sum = 0.0;
        for (var b = -8 * Spread; b <= 8 * Spread; b += Step)
        {
            var log = Normal.PDFLn(0, Spread, b);
            foreach (var spell in spells)
                log += spell.Weight * Math.Log(Likelihood(distribution, spell, centre + b, scale));
            sum += Step * Math.Exp(log);
        }
        return Math.Log(sum);
    }

    private static double Likelihood(LifeDistribution distribution, Spell spell, double centre, double scale)
    {
        var weibull = distribution == LifeDistribution.Weibull;
        double Ended(double t) =>
            t <= 0 ? 0
            : double.IsInfinity(t) ? 1
            : weibull ? Weibull.CDF(1 / scale, Math.Exp(centre), t)
            : LogNormal.CDF(centre, scale, t);
        return spell.End == SpellEnd.At
            ? weibull
                ? Weibull.PDF(1 / scale, Math.Exp(centre), spell.Lower)
                : LogNormal.PDF(centre, scale, spell.Lower)
            : Ended(spell.Upper) - Ended(spell.Lower);
    }
}
