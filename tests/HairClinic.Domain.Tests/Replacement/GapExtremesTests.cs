using HairClinic.Domain.Replacement;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>Horizons, spreads and degrees of freedom by many powers of ten: against closed forms, and against mpmath.</summary>
public sealed class GapExtremesTests
{
    private const double LeadMean = 4.025351691;
    private static readonly AgedWeibullLife Hundred = new(7.6, 260, 100);
    private static readonly ContinuousLeadTime Usual = new(LeadMean, 0.25, null);

    // ∫₀ᵗ S(a + u) / S(a) du by the incomplete gamma function: e^A · λ/k · (Γ(1/k, A) − Γ(1/k, ((a+t)/λ)^k)), A = (a/λ)^k.
    private static double WornOutDays(AgedWeibullLife life, double days)
    {
        double Wear(double at) => Math.Pow(at / life.ScaleDays, life.Shape);
        double Gamma(double at) => SpecialFunctions.GammaUpperIncomplete(1 / life.Shape, Wear(at));
        var lasts = Gamma(life.AgeDays) - Gamma(life.AgeDays + days);
        return days - Math.Exp(Wear(life.AgeDays)) * life.ScaleDays / life.Shape * lasts;
    }

    // Over normal lead times by the trapezoid rule, which converges exponentially for them.
    private static double OverLeadTimes(double spread, Func<double, double> f) =>
        Enumerable
            .Range(-1800, 3601)
            .Select(i => i / 200.0)
            .Sum(z => Normal.PDF(0, 1, z) * 0.005 * f(14 + Math.Exp(LeadMean + spread * z)));

    [Theory]
    [InlineData(2000)]
    [InlineData(1e5)]
    [InlineData(1e7)]
    [InlineData(1e9)]
    [InlineData(1e18)]
    [InlineData(1e300)]
    [InlineData(double.MaxValue)]
    public void Beyond_every_lead_time_a_longer_horizon_counts_no_more_days(double horizon)
    {
        foreach (var (age, spread) in new[] { (0, 0.25), (100, 0.25), (200, 0.25), (240, 0.05), (400, 0.5) })
        {
            var life = Hundred with { AgeDays = age };
            var gap = new GapByQuadrature(life, new ContinuousLeadTime(LeadMean, spread, null), 14);

            Assert.Equal(OverLeadTimes(spread, days => WornOutDays(life, days)), gap.ExpectedDaysWithoutHair(horizon), 1e-9);
        }
    }

    // mpmath 1.3, 30 digits: the integral of F_R(u) P(Λ + p > u) in ln u; the tail of a log-t has no end.
    [Theory]
    [InlineData(4.4, 95, 0, LeadMean, 0.2077, 4.0, 14, 1e9, 103.63304731729082)]
    [InlineData(4.4, 95, 0, LeadMean, 0.2077, 4.0, 14, 1e300, 2.524716123043561e286)]
    [InlineData(0.5, 50, 10, 3, 1, 2.0, 0, 1e5, 937.21132992744249)]
    [InlineData(7.6, 260, 100, LeadMean, 0.25, null, 14, 20, 0.01693706954382348)]
    [InlineData(7.6, 260, 100, LeadMean, 0.25, null, 14, 0.001, 2.6668322525574705e-11)]
    public void Days_without_hair_agree_with_an_integral_of_many_digits(
        double shape,
        double scale,
        double age,
        double mean,
        double spread,
        double? freedom,
        double preparation,
        double horizon,
        double expected
    )
    {
        var gap = new GapByQuadrature(new AgedWeibullLife(shape, scale, age), new ContinuousLeadTime(mean, spread, freedom), preparation);

        Assert.Equal(1, gap.ExpectedDaysWithoutHair(horizon) / expected, 1e-10);
    }

    // So soon F_R(u) = h·u, so h·H²/2, h the hazard at the age; of a new unit (u/λ)^k, so λ/(k+1)·(H/λ)^(k+1).
    [Theory]
    [InlineData(1e-2, 1e-3)]
    [InlineData(1e-6, 1e-7)]
    [InlineData(1e-100, 1e-9)]
    public void Within_a_tiny_horizon_they_are_the_hazard_by_half_its_square(double horizon, double apart)
    {
        var hazard = 7.6 / 260 * Math.Pow(100 / 260.0, 6.6);

        Assert.Equal(1, Days(Hundred) / (hazard * horizon * horizon / 2), apart);
        if (horizon > 1e-30)
            Assert.Equal(1, Days(Hundred with { AgeDays = 0 }) / (260 / 8.6 * Math.Pow(horizon / 260, 8.6)), 1e-10);
        Assert.Equal(0, new GapByQuadrature(Hundred, Usual, 14).ExpectedDaysWithoutHair(0));

        double Days(AgedWeibullLife life) => new GapByQuadrature(life, Usual, 14).ExpectedDaysWithoutHair(horizon);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(14)]
    public void A_horizon_about_the_preparation_has_no_seam(double preparation)
    {
        var gap = new GapByQuadrature(Hundred with { AgeDays = 200 }, Usual, preparation);
        double Rise(double from, double to) => gap.ExpectedDaysWithoutHair(to) - gap.ExpectedDaysWithoutHair(from);

        // So soon nothing has come, so the days are those after the wear-out alone.
        Assert.Equal(WornOutDays(Hundred with { AgeDays = 200 }, 16), gap.ExpectedDaysWithoutHair(16), 1e-4);
        Assert.Equal(Rise(14 - 1e-3, 14), Rise(14, 14 + 1e-3), 1e-6);
    }

    // A lead time of one length: the closed form itself.
    [Theory]
    [InlineData(1e-9, 0)]
    [InlineData(1e-9, 1e12)]
    [InlineData(1e-6, 1)]
    [InlineData(1e-6, 3)]
    public void A_lead_time_without_spread_is_a_number_of_days(double spread, double freedom)
    {
        var lead = new ContinuousLeadTime(LeadMean, spread, freedom == 0 ? null : freedom);
        var gap = new GapByQuadrature(Hundred, lead, 14);
        var days = 14 + Math.Exp(LeadMean);

        Assert.Equal(Hundred.ChanceEndsWithin(days + 20), gap.GapChanceIfOrderedIn(20), 1e-5);
        if (freedom is 0 or > 100)
            Assert.Equal(WornOutDays(Hundred, days), gap.ExpectedDaysWithoutHair(1e9), 1e-6);
    }

    // A life of one length: no chance of a gap before it, certainty after.
    [Fact]
    public void A_life_without_spread_is_a_number_of_days()
    {
        var lead = new ContinuousLeadTime(LeadMean, 0.25, null);
        var gap = new GapByQuadrature(new AgedWeibullLife(1e6, 200, 100), lead, 14);

        Assert.Equal(Normal.CDF(LeadMean, 0.25, Math.Log(86)), 1 - gap.GapChanceIfOrderedIn(0), 1e-6);
        Assert.Equal(1, gap.GapChanceIfOrderedIn(87), 1e-12);
    }

    [Theory]
    [InlineData(1e8, 1e-6)]
    [InlineData(1e10, 1e-9)]
    [InlineData(1e12, 1e-9)]
    [InlineData(1e15, 1e-9)]
    [InlineData(1e300, 1e-9)]
    public void Many_degrees_of_freedom_are_the_normal(double freedom, double apart)
    {
        var (many, normal) = (Of(freedom), Of(null));

        Assert.Equal(normal.GapChanceIfOrderedIn(0), many.GapChanceIfOrderedIn(0), apart);
        foreach (var horizon in new[] { 1, 60, 365, 1e9 })
            Assert.Equal(normal.ExpectedDaysWithoutHair(horizon), many.ExpectedDaysWithoutHair(horizon), apart);
        Assert.Equal(normal.ReorderInDays(0.1), many.ReorderInDays(0.1));

        static GapByQuadrature Of(double? freedom) => new(Hundred, new ContinuousLeadTime(LeadMean, 0.25, freedom), 14);
    }

    // Closed forms: one degree of freedom is Cauchy's distribution, for two see Johnson, Kotz and Balakrishnan (1995), ch. 28.
    [Theory]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(40)]
    [InlineData(1e6)]
    [InlineData(1e12)]
    public void Few_degrees_of_freedom_have_the_tails_they_have(double z)
    {
        double Later(double freedom) => new ContinuousLeadTime(0, 500 / z, freedom).Survival(Math.Exp(500));

        Assert.Equal(1, Later(1) / (Math.Atan(1 / z) / Math.PI), 1e-12);
        Assert.Equal(1, Later(2) * (Math.Sqrt(2 + z * z) * (Math.Sqrt(2 + z * z) + z)), 1e-12);
    }

    // mpmath 1.3, 30 digits: half the regularised incomplete beta function.
    [Theory]
    [InlineData(0.1, 2, 0.38917711390163805)]
    [InlineData(0.1, 1e9, 0.052545068332135795)]
    [InlineData(4, 3, 0.019970984035859414)]
    [InlineData(30, 10, 2.2876257041148066e-11)]
    [InlineData(1000, 5, 3.3836281823243152e-7)]
    [InlineData(1e6, 5, 2.8669989354453708e-7)]
    public void Students_tail_agrees_with_the_incomplete_beta_function(double freedom, double z, double expected) =>
        Assert.Equal(1, new ContinuousLeadTime(0, 100 / z, freedom).Survival(Math.Exp(100)) / expected, 1e-12);

    [Theory]
    [InlineData(-5)]
    [InlineData(-1)]
    [InlineData(0)]
    [InlineData(2.5)]
    [InlineData(8)]
    public void The_normals_tail_is_the_normals(double z) =>
        Assert.Equal(1, new ContinuousLeadTime(0, 1, null).Survival(Math.Exp(z)) / Normal.CDF(0, 1, -z), 1e-12);

    [Theory]
    [InlineData(0.05)]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Fewer_degrees_of_freedom_than_can_be_calculated_are_refused(double freedom) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ContinuousLeadTime(4, 0.2, freedom));

    [Theory]
    [InlineData(260)]
    [InlineData(20_000)]
    [InlineData(54_000)]
    [InlineData(55_000)]
    [InlineData(1e6)]
    public void An_order_can_wait_until_its_last_day_or_farther_than_is_looked_at(double scale)
    {
        var life = new AgedWeibullLife(7.6, scale, 0);
        double Chance(int days) => OverLeadTimes(0.25, wait => life.ChanceEndsWithin(days + wait));

        var last = new GapByQuadrature(life, Usual, 14).ReorderInDays(0.05)!.Value;

        Assert.True(Chance(last) <= 0.05);
        Assert.Equal(last < GapByQuadrature.FarthestDays, Chance(last + 1) > 0.05);
        Assert.Equal(scale > 54_500, last == GapByQuadrature.FarthestDays);
    }

    [Theory]
    [InlineData(7.6, 260, 1e4)]
    [InlineData(900, 100, 400)]
    [InlineData(7.6, 260, 1e9)]
    [InlineData(7.6, 1e-6, 0)]
    public void A_unit_past_any_life_is_missed_every_day_until_the_next_is_there(double shape, double scale, double age)
    {
        var gap = new GapByQuadrature(new AgedWeibullLife(shape, scale, age), Usual, 14);
        var wait = 14 + Math.Exp(LeadMean + 0.25 * 0.25 / 2);

        Assert.Null(gap.ReorderInDays(0.05));
        Assert.Equal(wait, gap.ExpectedDaysWithoutHair(1e9), 0.01);
    }
}
