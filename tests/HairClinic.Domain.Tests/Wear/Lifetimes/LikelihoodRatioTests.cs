using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Against the log-likelihoods with and without the drug in aft_fits.csv (its first line names the source).</summary>
public sealed class LikelihoodRatioTests
{
    private static readonly Table Fits = Table.Read("aft_fits.csv");
    private static readonly int[] ByDrug = [.. Spells.Drug.Select(d => (int)d)];

    [Theory]
    [InlineData("leukaemia_weibull_x6mp", LifeDistribution.Weibull)]
    [InlineData("leukaemia_lognormal_x6mp", LifeDistribution.LogNormal)]
    [InlineData("leukaemia_interval_week_weibull_x6mp", LifeDistribution.Weibull)]
    [InlineData("leukaemia_interval_week_lognormal_x6mp", LifeDistribution.LogNormal)]
    public void Without_priors_it_is_twice_the_published_difference(string name, LifeDistribution distribution)
    {
        var spells = name.Contains("interval", StringComparison.Ordinal) ? Spells.OfLeukaemiaByWeek : Spells.OfLeukaemia;

        var test = LikelihoodRatio.TestGroups(distribution, spells, ByDrug, [], default, default, LifePriors.Flat(0));

        var published = 2 * (Value(name, "loglik") - Value(name, "loglik_null_or_intercept_only"));
        Assert.Equal(published, test.ChiSquare, 2e-6);
        Assert.Equal(1, test.DegreesOfFreedom);
        Assert.InRange(test.P, 1e-6, 1e-4);
        Assert.Equal([0, Value(name, "x6mp")], test.Effects, (a, b) => Math.Abs(a - b) < 1e-7);
    }

    [Fact]
    public void Groups_by_chance_are_not_told_apart()
    {
        int[] groups = [.. Enumerable.Range(0, 42).Select(i => i % 3)];

        var test = LikelihoodRatio.TestGroups(
            LifeDistribution.Weibull,
            Spells.OfLeukaemia,
            groups,
            [],
            default,
            default,
            LifePriors.Flat(0)
        );

        Assert.Equal(2, test.DegreesOfFreedom);
        Assert.InRange(test.P, 0.2, 1);
    }

    [Fact]
    public void What_a_covariate_tells_already_the_groups_need_not_tell_again()
    {
        CovariateColumn same = new("same", [.. Spells.Drug]);
        LifePriors proper = new(new(2, 1), [LifePriors.UsualCoefficient], LifePriors.UsualLogScale);

        var test = LikelihoodRatio.TestGroups(LifeDistribution.Weibull, Spells.OfLeukaemia, ByDrug, [same], default, default, proper);

        Assert.Null(test.Missing);
        Assert.InRange(test.ChiSquare, 0, 19);
    }

    [Fact]
    public void A_group_in_which_nothing_ended_leaves_no_test_and_the_reason_is_told()
    {
        Spell[] spells = [Spell.Exact(3), Spell.Exact(4), Spell.Exact(6), Spell.RightCensored(9), Spell.RightCensored(11)];

        Assert.NotNull(
            LikelihoodRatio.TestGroups(LifeDistribution.Weibull, spells, [0, 0, 0, 1, 1], [], default, default, LifePriors.Flat(0)).Missing
        );
    }

    private static double Value(string fit, string parameter) =>
        Fits.Number(Fits.Rows.Single(r => Fits.Text(r, "fit") == fit && Fits.Text(r, "parameter") == parameter), "estimate");
}
