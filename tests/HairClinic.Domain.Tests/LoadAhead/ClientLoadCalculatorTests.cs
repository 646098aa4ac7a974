using HairClinic.Domain.LoadAhead;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.LoadAhead;

/// <summary>One client's weeks where nothing is left to chance, by hand.</summary>
public sealed class ClientLoadCalculatorTests
{
    private static readonly VisitTypeMinutes Minutes = new(new(120, 75), new(60, 45), new(180, 150));

    /// <summary>Nobody who wears nothing and has nothing planned comes, but for what was agreed.</summary>
    private static readonly ClientLoadInput Nothing = new(NeverLifts, TargetDays: 21);

    [Theory]
    [InlineData(6, 0)]
    [InlineData(7, 1)]
    [InlineData(13, 1)]
    [InlineData(14, 2)]
    public void A_fitting_falls_in_the_week_of_its_day(int inDays, int week)
    {
        var load = Of(Nothing with { FittingInDays = inDays });

        Assert.Equal([week], Enumerable.Range(0, 4).Where(w => Math.Round(load.Week(w).Fittings, 9) == 1));
        Assert.Equal(180, load.Week(week).ChairMinutes, 1e-9);
        Assert.Equal(150, load.Week(week).HandsOnMinutes, 1e-9);
        Assert.Equal(0, Enumerable.Range(0, 4).Sum(w => load.Week(w).Rebonds));
    }

    [Fact]
    public void Washes_of_a_rhythm_come_once_in_each_of_its_weeks_for_certain()
    {
        var load = Of(Nothing with { WashEveryDays = 14, NextWashInDays = 3 });

        Assert.Equal([1, 0, 1, 0], Enumerable.Range(0, 4).Select(w => Math.Round(load.Week(w).Washes, 9)));
        Assert.Equal(0, load.Week(0).ChairVariance, 1e-9);
    }

    [Fact]
    public void A_first_bond_that_is_planned_is_a_rebond_on_its_day_and_the_next_a_target_later()
    {
        var load = Of(Nothing with { FirstBondInDays = 2, TargetDays = 14 });

        Assert.Equal([1, 0, 1, 0], Enumerable.Range(0, 4).Select(w => Math.Round(load.Week(w).Rebonds, 9)));
        Assert.Equal(0, Of(Nothing with { FirstBondInDays = 28 }).Week(3).Rebonds);
    }

    [Fact]
    public void A_bond_on_the_head_ends_at_its_own_target_and_the_next_ones_at_theirs()
    {
        var load = Of(Nothing with { BondAgeDays = 16, CurrentTargetDays = 20, TargetDays = 7 });

        Assert.Equal([1, 1, 1, 1], Enumerable.Range(0, 4).Select(w => Math.Round(load.Week(w).Rebonds, 9)));
    }

    /// <summary>Asking after one client leaves nothing behind for the next.</summary>
    [Fact]
    public void One_after_the_other_are_counted_as_each_alone()
    {
        var (salon, one) = (new SalonLoad(4), new ClientLoadCalculator(4));
        one.AddTo(salon, Nothing with { FirstBondInDays = 2, WashEveryDays = 7 }, Minutes);
        var before = Enumerable.Range(0, 4).Select(w => salon.Week(w).Rebonds).ToList();

        one.AddTo(salon, Nothing, Minutes);

        Assert.Equal(before, Enumerable.Range(0, 4).Select(w => salon.Week(w).Rebonds));
        // Bonds on the days 2 and 23 take the washes of the days 0 and 21 with them.
        Assert.Equal([0, 1, 1, 0], Enumerable.Range(0, 4).Select(w => Math.Round(salon.Week(w).Washes, 9)));
    }

    [Fact]
    public void What_holds_no_day_by_the_curve_and_still_does_is_done_tomorrow()
    {
        var chances = new double[10];
        RebondIntervalCalculator.FillChances(new double[20], targetDays: 8, ageDays: 3, chances);

        Assert.Equal(1, chances[1]);
        Assert.Equal(1, chances.Sum());
    }

    [Fact]
    public void An_order_that_falls_beyond_what_is_looked_at_is_not_counted()
    {
        var (load, life) = (new OrderLoad(2), new double[61]);
        life[60] = 1;
        for (var scenario = 0; scenario < 3; scenario++)
            OrderLoadCalculator.AddTo(load, scenario, new(2027, 1, 15), orderInDays: 40, life, days: 40);

        Assert.Equal(0, load.Month(0).Mean + load.Month(1).Mean);
    }

    /// <summary>January from the 15th on has seventeen days: an order on the 31st is January's, one a day later February's.</summary>
    [Theory]
    [InlineData(16, 0)]
    [InlineData(17, 1)]
    public void An_order_is_counted_in_the_month_of_its_day(int inDays, int month)
    {
        var (load, life) = (new OrderLoad(2), new double[61]);
        life[60] = 1;
        for (var scenario = 0; scenario < 3; scenario++)
            OrderLoadCalculator.AddTo(load, scenario, new(2027, 1, 15), inDays, life, days: 45);

        Assert.Equal(1, load.Month(month).Mean, 1e-12);
        Assert.Equal(0, load.Month(1 - month).Mean, 1e-12);
    }

    [Fact]
    public void Washes_of_an_earlier_question_are_forgotten_and_a_rhythm_has_at_least_a_day()
    {
        var washes = new double[10];
        washes[1] = 5;
        ExpectedWashes.Expect(nextIn: -3, everyDays: 4, new double[10], washes);

        Assert.Equal([0, 4, 8], Enumerable.Range(0, 10).Where(day => washes[day] == 1));
        Assert.Equal(3, washes.Sum());
        Assert.Throws<ArgumentOutOfRangeException>(() => ExpectedWashes.Expect(0, 0, new double[10], washes));
    }

    private static SalonLoad Of(ClientLoadInput question)
    {
        var salon = new SalonLoad(4);
        new ClientLoadCalculator(4).AddTo(salon, question, Minutes);
        return salon;
    }

    /// <summary>A hold of centuries: each bond lasts to its target.</summary>
    private static LifePrediction NeverLifts(PracticeEffectNode scenario)
    {
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, 1_000_000, 2_000_000);
        var given = PopulationParameters.FromPriors(window) with { PracticeVariance = 0 };
        return new LifePrediction(given, ClientEffectNodes.For(given), window.Place);
    }
}
