using HairClinic.Domain.Wear;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>
/// Expected numbers were solved numerically outside this program when the model was designed; each is also checked
/// here by a second integral: over the smallest-extreme-value noise instead of over the people.
/// </summary>
public sealed class HoldPriorTests
{
    [Theory]
    [InlineData(28, 56, 0.18316, 3.79958, 32.434, 41.253)]
    [InlineData(182, 273, 0.10714, 5.47741, 198.34, 228.31)]
    public void The_prior_has_its_designed_scale_place_and_quantiles(
        double low,
        double high,
        double sigma,
        double centre,
        double lowFifth,
        double median
    )
    {
        var prior = new HoldPrior(low, high);

        Assert.Equal(sigma, prior.Sigma, 5e-6);
        Assert.Equal(centre, prior.Centre, 5e-6);
        Assert.Equal(lowFifth, prior.Quantile(0.2), 5e-3 * low / 28);
        Assert.Equal(median, prior.Quantile(0.5), 5e-3 * low / 28);
    }

    [Theory]
    [InlineData(28, 56)]
    [InlineData(182, 273)]
    [InlineData(7, 182)]
    public void Of_all_bonds_a_tenth_lift_before_the_window_and_a_tenth_outlast_it(double low, double high)
    {
        var prior = new HoldPrior(low, high);

        Assert.Equal(0.9, prior.Survival(low), 1e-5);
        Assert.Equal(0.1, prior.Survival(high), 1e-5);
        Assert.Equal(0.9, SurvivalByNoise(prior, low), 1e-5);
        Assert.Equal(0.1, SurvivalByNoise(prior, high), 1e-5);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(32)]
    [InlineData(41.253)]
    [InlineData(70)]
    public void Survival_agrees_with_the_integral_taken_the_other_way_round(double days)
    {
        var prior = new HoldPrior(28, 56);

        Assert.Equal(SurvivalByNoise(prior, days), prior.Survival(days), 1e-9);
    }

    [Theory]
    [InlineData(1e-6)]
    [InlineData(0.05)]
    [InlineData(0.5)]
    [InlineData(0.999)]
    public void A_quantile_is_where_survival_says_it_is(double probability)
    {
        var prior = new HoldPrior(28, 56);

        Assert.Equal(1 - probability, prior.Survival(prior.Quantile(probability)), 1e-10);
    }

    [Fact]
    public void A_four_to_eight_week_window_aims_at_day_32() => Assert.Equal(32, new HoldPrior(new HoldWindow(4, 8)).TargetDays);

    [Fact]
    public void Every_window_aims_at_the_last_whole_day_that_four_bonds_in_five_reach()
    {
        for (var latest = 1; latest <= HoldWindow.LongestWeeks; latest++)
        {
            for (var earliest = 1; earliest <= latest; earliest++)
            {
                var prior = new HoldPrior(new HoldWindow(earliest, latest));
                Assert.True(prior.Survival(prior.TargetDays) >= 0.8);
                Assert.True(prior.Survival(prior.TargetDays + 1) < 0.8);
                Assert.InRange(prior.TargetDays, 7 * earliest, 7 * latest);
            }
        }
    }

    [Fact]
    public void A_window_of_one_week_is_taken_at_its_word()
    {
        var prior = new HoldPrior(new HoldWindow(4, 4));

        Assert.Equal(28, prior.TargetDays);
        Assert.Equal(28, prior.Quantile(0.5));
        Assert.Equal(1, prior.Survival(28));
        Assert.Equal(0, prior.Survival(29));
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(10, 9)]
    [InlineData(double.NaN, 9)]
    [InlineData(5, double.PositiveInfinity)]
    public void A_window_without_sense_is_refused(double low, double high) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new HoldPrior(low, high));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_quantile_lies_strictly_between_never_and_always(double probability) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new HoldPrior(28, 56).Quantile(probability));

    // P(T > t) = ∫ φ-tail((ln t − m − σe) / s) · density(e) de, e smallest extreme value: density exp(e − eᵉ); fine trapezoid.
    private static double SurvivalByNoise(HoldPrior prior, double days)
    {
        var spread = Math.Sqrt(Math.Pow(prior.ClientSpread, 2) + Math.Pow(prior.PracticeSpread, 2));
        const double Step = 1e-3;
        var sum = 0.0;
        for (var noise = -40.0; noise <= 5; noise += Step)
        {
            var density = Math.Exp(noise - Math.Exp(noise));
            sum += density * (1 - Normal.CDF(0, 1, (Math.Log(days) - prior.Centre - prior.Sigma * noise) / spread));
        }

        return sum * Step;
    }

    /// <summary>The same integral by another rule, written out with the numbers of the definition: Simpson's, over b + δ.</summary>
    [Theory]
    [InlineData(28, 56)]
    [InlineData(21, 35)]
    public void Its_survival_is_the_integral_of_the_definition(double low, double high)
    {
        var prior = new HoldPrior(low, high);
        var ratio = Math.Log(high / low);
        var (sigma, centre) = (0.264245 * ratio, Math.Log(high) - 0.325714 * ratio);
        var spread = Math.Sqrt(Math.Pow(0.181153 * ratio, 2) + Math.Pow(0.128095 * ratio, 2));
        foreach (var days in new[] { 5.0, 28, 41, 60, 90 })
        {
            const int Steps = 4000;
            var sum = 0.0;
            for (var i = 0; i <= Steps; i++)
            {
                var at = 9 * (2.0 * i / Steps - 1);
                var weight =
                    i is 0 or Steps ? 1
                    : i % 2 == 1 ? 4
                    : 2;
                sum += weight * Math.Exp(-at * at / 2 - Math.Exp((Math.Log(days) - centre - at * spread) / sigma));
            }
            Assert.Equal(sum * 18 / Steps / 3 / Math.Sqrt(2 * Math.PI), prior.Survival(days), 1e-12);
        }
    }
}
