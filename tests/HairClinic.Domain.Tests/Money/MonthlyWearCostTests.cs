using HairClinic.Domain.Money;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Money;

/// <summary>Against the definition: unit price ÷ expected worn months + rebonds a month × price.</summary>
public sealed class MonthlyWearCostTests
{
    // A window of 182–273 worn days, and one of 4–8 weeks whose target is day 32 (both worked out when the model was designed).
    private static readonly WindowPrior Life = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly WindowPrior Hold = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);

    [Fact]
    public void A_months_share_of_the_unit_is_its_price_over_the_months_it_is_expected_to_last()
    {
        var life = Of(Life);
        var cost = MonthlyWearCost.Estimate(90_000, life, hold: null, closesDays: 56, visitPrice: null);

        // The mean as the average of its quantiles.
        var mean = Enumerable.Range(0, 4000).Average(i => life.Quantile((i + 0.5) / 4000));
        Assert.Equal(mean / (365.2425 / 12), cost.WornMonths, 2e-3);
        Assert.Equal(90_000 / cost.WornMonths, cost.Unit, 1e-9);
        Assert.Equal((null, null, cost.Unit), (cost.RebondsAMonth, cost.Visits, cost.Month));
    }

    [Fact]
    public void Without_visits_the_band_is_the_lifes_own()
    {
        var life = Of(Life);
        var cost = MonthlyWearCost.Estimate(90_000, life, hold: null, closesDays: 56, visitPrice: null);

        Assert.Equal(1, cost.Low / (90_000 * (365.2425 / 12) / 273), 5e-3);
        Assert.Equal(1, cost.High / (90_000 * (365.2425 / 12) / 182), 5e-3);
    }

    [Fact]
    public void Rebonds_come_at_the_target_or_when_it_lifts_before()
    {
        var hold = Of(Hold);
        var cost = MonthlyWearCost.Estimate(90_000, Of(Life), hold, closesDays: 56, visitPrice: 8_000);

        var days = Enumerable.Range(0, 32).Sum(d => hold.Survival(d));
        Assert.Equal(365.2425 / 12 / days, cost.RebondsAMonth!.Value, 1e-6);
        Assert.Equal(8_000 * cost.RebondsAMonth.Value, cost.Visits!.Value, 1e-6);
        Assert.Equal(cost.Unit + cost.Visits.Value, cost.Month, 1e-9);
        Assert.InRange(cost.Month, cost.Low, cost.High);
    }

    [Fact]
    public void A_visit_with_no_price_in_this_currency_is_not_in_it()
    {
        var cost = MonthlyWearCost.Estimate(90_000, Of(Life), Of(Hold), closesDays: 56, visitPrice: null);

        Assert.NotNull(cost.RebondsAMonth);
        Assert.Null(cost.Visits);
        Assert.Equal(cost.Unit, cost.Month);
    }

    [Fact]
    public void No_target_lies_beyond_the_window()
    {
        var cost = MonthlyWearCost.Estimate(90_000, Of(Life), Of(Hold), closesDays: 10, visitPrice: 8_000);

        Assert.Equal(365.2425 / 12 / 10, cost.RebondsAMonth!.Value, 0.02);
    }

    private static LifePrediction Of(WindowPrior window)
    {
        var population = PopulationParameters.FromPriors(window);
        return new(population, ClientEffectNodes.For(population), window.Place);
    }
}
