using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Tests.Wear.Curves;

/// <summary>Against km_tables.csv (its first line names the source) and textbook definitions.</summary>
public sealed class SurvivalCurveTests
{
    private static readonly Table Published = Table.Read("km_tables.csv");

    [Theory]
    [InlineData("nist", "all", 10)]
    [InlineData("leukaemia", "treat=6-MP", 7)]
    [InlineData("leukaemia", "treat=control", 12)]
    [InlineData("ovarian_all", "all", 12)]
    [InlineData("ovarian_by_rx", "rx=1", 7)]
    [InlineData("ovarian_by_rx", "rx=2", 5)]
    public void A_curve_agrees_with_the_published_table_line_by_line(string data, string stratum, int lines)
    {
        var curve = SurvivalCurve.Estimate(Data(data, stratum));
        var expected = Published.Rows.Where(row => row[0] == data && row[1] == stratum).ToList();

        Assert.Equal(lines, expected.Count);
        Assert.Equal(lines, curve.Steps.Count);
        foreach (var (step, row) in curve.Steps.Zip(expected))
        {
            Assert.Equal(Published.Number(row, "time"), step.Time);
            Assert.Equal(Published.Number(row, "n_risk"), step.AtRisk);
            Assert.Equal(Published.Number(row, "n_event"), step.Events);
            Assert.Equal(Published.Number(row, "survival"), step.Survival, 1e-10);
            if (row[^1].Trim() == "NaN")
                Assert.True(double.IsNaN(step.StdError) && double.IsNaN(step.Lower) && double.IsNaN(step.Upper));
            else
                Assert.Equal(Published.Number(row, "greenwood_se"), step.StdError, 1e-10);
        }
    }

    // Klein and Moeschberger give log(−log) limits for these data's first step; by hand here: S = 6/7, se = 0.0763604.
    [Fact]
    public void Limits_are_those_of_the_log_minus_log_transformation()
    {
        var step = SurvivalCurve.Estimate(Data("leukaemia", "treat=6-MP")).Steps[0];
        var survival = 18.0 / 21;
        var reach = 1.959963984540054 * 0.07636035483 / (survival * Math.Abs(Math.Log(survival)));

        Assert.Equal(Math.Pow(survival, Math.Exp(reach)), step.Lower, 1e-9);
        Assert.Equal(Math.Pow(survival, Math.Exp(-reach)), step.Upper, 1e-9);
    }

    // Printed for these data in many textbooks: median remission 23 weeks with the drug, 8 without.
    [Theory]
    [InlineData("treat=6-MP", 23)]
    [InlineData("treat=control", 8)]
    public void The_median_is_where_the_curve_crosses_one_half(string stratum, double median) =>
        Assert.Equal(median, SurvivalCurve.Estimate(Data("leukaemia", stratum)).Quantile(0.5).Time);

    [Fact]
    public void Where_the_curve_runs_level_at_the_height_asked_for_the_middle_is_told() =>
        Assert.Equal(2.5, SurvivalCurve.Estimate([Spell.Exact(1), Spell.Exact(2), Spell.Exact(3), Spell.Exact(4)]).Quantile(0.5).Time);

    [Fact]
    public void A_curve_that_ends_level_at_the_height_asked_for_is_level_to_its_last_time() =>
        Assert.Equal((386 + 500) / 2.0, SurvivalCurve.Estimate(Spells.OfNist).Quantile(0.5).Time);

    [Fact]
    public void A_curve_that_does_not_come_down_so_far_has_no_such_quantile()
    {
        var quantile = SurvivalCurve.Estimate(Spells.OfNist).Quantile(0.9);

        Assert.Null(quantile.Time);
        Assert.Null(quantile.Upper);
    }

    [Fact]
    public void A_weight_is_as_good_as_that_many_rows()
    {
        var once = SurvivalCurve.Estimate([Spell.Exact(3, 2), Spell.RightCensored(3, 3), Spell.Exact(5), Spell.RightCensored(9, 2)]);
        var many = SurvivalCurve.Estimate([
            Spell.Exact(3),
            Spell.Exact(3),
            Spell.RightCensored(3),
            Spell.RightCensored(3),
            Spell.RightCensored(3),
            Spell.Exact(5),
            Spell.RightCensored(9),
            Spell.RightCensored(9),
        ]);

        Assert.Equal(many.Steps, once.Steps);
    }

    [Fact]
    public void Before_anything_ended_everything_goes_on()
    {
        var curve = SurvivalCurve.Estimate([Spell.RightCensored(3), Spell.RightCensored(7)]);

        Assert.Empty(curve.Steps);
        Assert.Equal(1, curve.Survival(100));
        Assert.Empty(SurvivalCurve.Estimate([]).Steps);
    }

    [Fact]
    public void Ends_known_only_within_an_interval_are_refused() =>
        Assert.Throws<ArgumentException>(() => SurvivalCurve.Estimate([Spell.FromBounds(2, 5)]));

    private static Spell[] Data(string data, string stratum) =>
        (data, stratum) switch
        {
            ("nist", _) => Spells.OfNist,
            ("leukaemia", "treat=6-MP") => [.. Spells.OfLeukaemia.Where((_, i) => Spells.Drug[i] == 1)],
            ("leukaemia", _) => [.. Spells.OfLeukaemia.Where((_, i) => Spells.Drug[i] == 0)],
            ("ovarian_by_rx", _) => [.. Spells.OfOvarian.Where((_, i) => Spells.Ovarian.Numbers("rx")[i] == (stratum == "rx=1" ? 1 : 2))],
            _ => Spells.OfOvarian,
        };
}
