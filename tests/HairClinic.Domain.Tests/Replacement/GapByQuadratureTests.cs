using HairClinic.Domain.Replacement;
using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>Against gap.csv, order_timing.csv and age_replacement.csv (their first lines name the sources).</summary>
public sealed class GapByQuadratureTests
{
    private static readonly Table Gap = Table.Read("gap.csv");
    private static readonly Table Timing = Table.Read("order_timing.csv");

    public static TheoryData<int> GapRows => [.. Enumerable.Range(0, Gap.Rows.Count)];

    [Theory]
    [MemberData(nameof(GapRows))]
    public void Chance_of_a_gap_reorder_day_and_days_without_hair_agree(int index)
    {
        var row = Gap.Rows[index];
        var gap = Of(row);

        Assert.Equal(Gap.Number(row, "gap_if_ordered_today"), gap.GapChanceIfOrderedIn(0), 1e-9);
        Assert.Equal(Gap.Number(row, "expected_days_without_hair"), gap.ExpectedDaysWithoutHair(Gap.Number(row, "horizon_days")), 1e-7);
        int? expected = Gap.Text(row, "reorder_in_days") is { Length: > 0 } days ? (int)Table.Number(days) : null;
        Assert.Equal(expected, gap.ReorderInDays(Gap.Number(row, "alpha")));
    }

    [Fact]
    public void Remaining_life_against_other_lead_times_agrees()
    {
        foreach (var row in Timing.Rows.Where(row => row[2].StartsWith("P(", StringComparison.Ordinal)))
        {
            var (life, age) = (Life(row[0]), Timing.Number(row, "age"));
            Assert.Equal(Timing.Number(row, "value"), Outlasts(life, age, row[1]), 1e-8);
        }
    }

    [Fact]
    public void The_latest_age_to_order_at_agrees()
    {
        foreach (var row in Timing.Rows.Where(row => row[2].StartsWith("latest", StringComparison.Ordinal)))
        {
            var (life, age) = (Life(row[0]), Timing.Number(row, "value"));
            Assert.Equal(Table.Number(row[2].Split(">=")[1]), Outlasts(life, age, row[1]), 1e-8);
        }
    }

    // Mean residual life: the integral of S(a + t) / S(a).
    [Theory]
    [InlineData(2.5, 180)]
    [InlineData(1.5, 120)]
    public void Mean_residual_lives_agree(double shape, double scale)
    {
        var table = Table.Read("age_replacement.csv");
        foreach (var row in table.Rows.Where(r => r[0] == FormattableString.Invariant($"mean residual life weibull({shape};{scale})")))
        {
            var life = new AgedWeibullLife(shape, scale, table.Number(row, "arg"));
            var mean = Enumerable
                .Range(0, 400)
                .Sum(i => GaussLegendreRule.Integrate(t => 1 - life.ChanceEndsWithin(t), 5.0 * i, 5.0 * i + 5, 10));
            Assert.Equal(1, mean / table.Number(row, "value"), 1e-8);
        }
    }

    [Fact]
    public void An_order_placed_later_never_lowers_the_chance_of_a_gap()
    {
        var gap = Of(Gap.Rows[4]);

        Assert.All(Enumerable.Range(0, 60), day => Assert.True(gap.GapChanceIfOrderedIn(day) < gap.GapChanceIfOrderedIn(day + 1)));
    }

    [Fact]
    public void A_unit_far_past_any_life_is_gone_and_nothing_overflows() =>
        Assert.Equal(
            1,
            new GapByQuadrature(new AgedWeibullLife(900, 100, 400), new ContinuousLeadTime(4, 0.2, null), 3).GapChanceIfOrderedIn(0)
        );

    private static GapByQuadrature Of(string[] row) =>
        new(
            new AgedWeibullLife(Gap.Number(row, "life_shape"), Gap.Number(row, "life_scale_days"), Gap.Number(row, "age_days")),
            new ContinuousLeadTime(
                Gap.Number(row, "lead_mean_log"),
                Gap.Number(row, "lead_sd_log"),
                Gap.Text(row, "lead_df") is { Length: > 0 } freedom ? Table.Number(freedom) : null
            ),
            Gap.Number(row, "preparation_days")
        );

    private static (string Name, double First, double Second) Words(string text)
    {
        var parts = text.TrimEnd(')').Split('(', ';').Select(part => part.Split('=')[^1]).ToArray();
        return (parts[0], Table.Number(parts[1]), parts.Length > 2 ? Table.Number(parts[2]) : 0);
    }

    private static LifePrediction Life(string text)
    {
        var (name, first, second) = Words(text);
        var population =
            name == "weibull"
                ? new PopulationParameters(LifeDistribution.Weibull, -Math.Log(first), [], Math.Log(second), 0, 0, 0)
                : new PopulationParameters(LifeDistribution.LogNormal, Math.Log(second), [], first, 0, 0, 0);
        return new LifePrediction(population, ClientEffectNodes.For(population), RowLocationScale.Plain);
    }

    private static double Outlasts(LifePrediction life, double age, string lead)
    {
        var (name, first, second) = Words(lead);
        if (name == "fixed")
            return life.SurvivalGiven(age, first);
        Func<double, double> density = name == "gamma" ? l => Gamma.PDF(first, 1 / second, l) : l => Normal.PDF(first, second, l);
        return Enumerable
            .Range(0, 240)
            .Sum(i => GaussLegendreRule.Integrate(l => density(l) * life.SurvivalGiven(age, l), 0.5 * i, 0.5 * i + 0.5, 8));
    }
}
