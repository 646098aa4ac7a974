using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Predictions for what is older than anything gets: an answer for every age, and never more life than is left.</summary>
public sealed class PastAnyLifeTests
{
    // Of a Weibull life the conditional quantile is closed: λ·((a/λ)^k − ln(1 − p))^(1/k) − a.
    [Theory]
    [InlineData(0.1, 60)]
    [InlineData(0.1, 300)]
    [InlineData(0.02, 180)]
    [InlineData(0.5, 5000)]
    public void What_is_left_agrees_with_the_closed_form(double tau, double age)
    {
        var life = Weibull(tau);
        var worn = Math.Pow(age / Math.Exp(5), 1 / tau);

        foreach (var p in new[] { 0.1, 0.5, 0.9 })
        {
            var expected = Math.Exp(5) * Math.Pow(worn - Math.Log(1 - p), tau) - age;
            Assert.Equal(expected, life.RemainingQuantile(age, p), 1e-8);
            Assert.Equal(1 - p, life.SurvivalGiven(age, expected), 1e-8);
        }
    }

    [Theory]
    [InlineData(LifeDistribution.Weibull, 1e-3, 1000)]
    [InlineData(LifeDistribution.Weibull, 6e-5, 160)]
    [InlineData(LifeDistribution.Weibull, 6e-5, 1000)]
    [InlineData(LifeDistribution.Weibull, 0.1, 6000)]
    [InlineData(LifeDistribution.Weibull, 0.1, 1e6)]
    [InlineData(LifeDistribution.Weibull, 0.1, 1e300)]
    [InlineData(LifeDistribution.LogNormal, 6e-5, 160)]
    [InlineData(LifeDistribution.LogNormal, 6e-5, 1e300)]
    public void Nothing_is_left_of_what_is_past_any_life(LifeDistribution distribution, double tau, double age)
    {
        var population = new PopulationParameters(distribution, Math.Log(tau), [], 5, 0, 0, 0);
        var life = new LifePrediction(population, ClientEffectNodes.For(population), RowLocationScale.Plain);

        foreach (var p in new[] { 0.1, 0.5, 0.9 })
            Assert.InRange(life.RemainingQuantile(age, p) / age, 0, 1e-6);
        Assert.Equal(1, life.SurvivalGiven(age, 0));
        Assert.InRange(life.SurvivalGiven(age, age * 0.01), 0, 1e-6);
        Assert.Equal(0, life.WholeDayQuantileGiven(Math.Min(age, 1e6), 0.5));
    }

    private static LifePrediction Weibull(double tau)
    {
        var population = new PopulationParameters(LifeDistribution.Weibull, Math.Log(tau), [], 5, 0, 0, 0);
        return new LifePrediction(population, ClientEffectNodes.For(population), RowLocationScale.Plain);
    }
}
