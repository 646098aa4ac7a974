using HairClinic.Domain.LoadAhead;

namespace HairClinic.Domain.Tests.LoadAhead;

/// <summary>Sums, variances and bands of a week, by hand.</summary>
public sealed class WeekLoadTests
{
    // Two rebonds of 120 minutes, half a wash of 60 and a quarter of a fitting of 180 take 240 + 30 + 45 minutes of a chair;
    // a variance goes with the square of the minutes.
    [Fact]
    public void A_week_is_its_visits_times_what_each_takes()
    {
        var minutes = new VisitTypeMinutes(new(120, 75), new(60, 45), new(180, 150));

        var week = WeekLoad.FromCounts(new(2, 0.5), new(0.5, 0.25), new(0.25, 0.1875), minutes);

        Assert.Equal((2, 0.5, 0.25), (week.Rebonds, week.Washes, week.Fittings));
        Assert.Equal((315, 210), (week.ChairMinutes, week.HandsOnMinutes));
        Assert.Equal(14_400 * 0.5 + 3_600 * 0.25 + 32_400 * 0.1875, week.ChairVariance, 1e-9);
        Assert.Equal(5_625 * 0.5 + 2_025 * 0.25 + 22_500 * 0.1875, week.HandsOnVariance, 1e-9);
    }

    [Fact]
    public void Weeks_add_up_part_by_part() =>
        Assert.Equal(
            new WeekLoad(11, 22, 33, 44, 55, 66, 77),
            new WeekLoad(1, 2, 3, 4, 5, 6, 7) + new WeekLoad(10, 20, 30, 40, 50, 60, 70)
        );

    /// <summary>Of Bernoulli's distribution: p and p(1 − p).</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.3, 0.21)]
    [InlineData(1, 0)]
    public void A_visit_that_comes_once_or_not_has_the_variance_of_a_coin(double chance, double variance)
    {
        Assert.Equal(chance, CountMoments.Bernoulli(chance).Mean);
        Assert.Equal(variance, CountMoments.Bernoulli(chance).Variance, 1e-12);
    }

    // 0, 3 and 6 at shares 1/6, 2/3, 1/6: mean 3, variance (9 + 9)/6 = 3, to which the clients' own 1 is added.
    // Four in five of a normal lie within 1.2816 standard deviations.
    [Fact]
    public void A_band_holds_the_clients_own_chance_and_how_far_the_scenarios_lie_apart()
    {
        var load = new OrderLoad(1);
        for (var scenario = 0; scenario < 3; scenario++)
            load.Add(scenario, 0, new CountMoments(3 * scenario, 1));

        Assert.Equal(3, load.Month(0).Mean, 1e-12);
        Assert.Equal(4, load.Month(0).Variance, 1e-12);
        Assert.Equal(3 - 1.2815515655 * 2, load.Band(0).From, 1e-9);
        Assert.Equal(3 + 1.2815515655 * 2, load.Band(0).To, 1e-9);
    }

    [Fact]
    public void A_band_never_begins_below_nothing()
    {
        var load = new OrderLoad(1);
        for (var scenario = 0; scenario < 3; scenario++)
            load.Add(scenario, 0, new CountMoments(1, 4));

        Assert.Equal(0, load.Band(0).From);
        Assert.Equal(1 + 1.2815515655 * 2, load.Band(0).To, 1e-9);
    }

    [Fact]
    public void Orders_of_two_salons_add_up_month_by_month_and_come_back_from_what_is_stored()
    {
        var (one, other) = (new OrderLoad(2), new OrderLoad(2));
        for (var scenario = 0; scenario < 3; scenario++)
        {
            one.Add(scenario, 0, new CountMoments(1, 0.5));
            one.Add(scenario, 1, new CountMoments(2, 0.25));
            other.Add(scenario, 1, new CountMoments(4, 1));
        }

        one.Add(other);
        var again = new OrderLoad(one.SumsByScenario());

        Assert.Equal(1, one.Month(0).Mean, 1e-12);
        Assert.Equal(0.5, one.Month(0).Variance, 1e-12);
        Assert.Equal(6, one.Month(1).Mean, 1e-12);
        Assert.Equal(1.25, one.Month(1).Variance, 1e-12);
        Assert.Equal((2, one.Month(0), one.Month(1)), (again.Months, again.Month(0), again.Month(1)));
        Assert.Equal(0, new OrderLoad([]).Months);
    }

    [Fact]
    public void A_week_that_is_just_full_fits_and_one_that_lacks_chairs_or_hands_does_not()
    {
        var salon = new SalonLoad(2);
        for (var scenario = 0; scenario < 3; scenario++)
            salon.Add(scenario, 1, new WeekLoad(4, 0, 0, 480, 300, 0, 0));
        double[] enough = [480, 480];

        Assert.Null(salon.FirstThatDoesNotFit(enough, [300, 300.0]));
        Assert.Equal(1, salon.FirstThatDoesNotFit([480, 479.0], enough));
        Assert.Equal(1, salon.FirstThatDoesNotFit(enough, [480, 299.0]));
    }
}
