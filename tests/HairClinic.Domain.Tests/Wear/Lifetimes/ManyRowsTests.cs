using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>A great many rows are climbed from a sample of them, in chunks: the answer is that of the same rows told by weights.</summary>
public sealed class ManyRowsTests
{
    private const int Copies = 12_500;

    [Fact]
    public void So_many_copies_of_the_published_data_give_the_published_estimates()
    {
        var rows = LifetimeFitRows.Create([.. Enumerable.Range(0, 20 * Copies).Select(i => Spells.OfNist[i % 20])], []);
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, LifePriors.Flat(0));

        Assert.Equal(606.527558, Math.Exp(fit.Coefficients[0]), 1e-6);
        Assert.Equal(1.720797261, 1 / fit.Scale, 1e-8);
        Assert.Equal(-75.1346181645 * Copies, fit.LogLikelihood, 1e-4);
        Assert.Equal(0.2059439090 / Math.Sqrt(Copies), fit.StdError(0), 1e-9);
    }

    // All rows of the second kind stand in one stretch that a sample steps over.
    [Fact]
    public void What_a_sample_does_not_see_is_found_all_the_same()
    {
        var other = Enumerable.Range(0, 20 * Copies).Select(i => i is >= 300 and < 500 ? 1.0 : 0).ToArray();
        var spells = other.Select((o, i) => o == 1 ? Longer(i % 20, 1) : Spells.OfNist[i % 20]).ToArray();
        Spell[] few = [.. Enumerable.Range(0, 40).Select(i => i < 20 ? Of(Spells.OfNist[i], Copies - 10) : Longer(i - 20, 10))];
        double[] kinds = [.. Enumerable.Range(0, 40).Select(i => i < 20 ? 0.0 : 1)];

        var many = LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(spells, [new("other", other)]), LifePriors.Flat(1));
        var weighed = LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(few, [new("other", kinds)]), LifePriors.Flat(1));

        Assert.True(many.Converged && many.Coefficients[1] > 0.1);
        Assert.Equal(weighed.Coefficients[1], many.Coefficients[1], 1e-8);
        Assert.Equal(weighed.StdError(1), many.StdError(1), 1e-8);
    }

    [Fact]
    public void The_same_rows_give_the_same_digits_every_time()
    {
        var rows = LifetimeFitRows.Create([.. Enumerable.Range(0, 20 * Copies).Select(i => Spells.OfNist[i * 7 % 20])], []);
        var fits = Enumerable.Range(0, 3).Select(_ => LifetimeFitter.Fit(LifeDistribution.LogNormal, rows, LifePriors.Flat(0))).ToList();

        Assert.All(fits, fit => Assert.Equal((fits[0].LogLikelihood, fits[0].LogScale), (fit.LogLikelihood, fit.LogScale)));
    }

    private static Spell Of(Spell spell, double weight) =>
        spell.End == SpellEnd.At ? Spell.Exact(spell.Lower, weight) : Spell.RightCensored(spell.Lower, weight);

    private static Spell Longer(int i, double weight) =>
        Spells.OfNist[i].End == SpellEnd.At ? Spell.Exact(1.5 * Spells.OfNist[i].Lower, weight) : Spell.RightCensored(500, weight);
}
