using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>Units far past their life, or past any: what is worn out gives no hair, however its numbers are written.</summary>
public sealed class WornOutUnitsTests
{
    private const int Preparation = 14;
    private static readonly LocalDate Today = new(2027, 3, 1);
    private static readonly WorkshopWorkingDays AlwaysOpen = new(Today, [], 1024);
    private static readonly LeadTime Lead = LeadTime.Learn(new LeadTimePrior(56, 77), [], []);
    private static readonly LeadTimeTable LeadDays = LeadTimeTable.FromLeadTime(Lead, 0, 0, 730);

    // Centre 5 is a life of 148 days.
    public static TheoryData<LifeDistribution, double, double, int> LongGone
    {
        get
        {
            var rows = new TheoryData<LifeDistribution, double, double, int>();
            foreach (var distribution in new[] { LifeDistribution.Weibull, LifeDistribution.LogNormal })
            {
                foreach (var tau in new[] { 1e-3, 1e-4, 1e-6, 1e-9, 1e-160 })
                {
                    rows.Add(distribution, 5, tau, 160);
                    rows.Add(distribution, 5, tau, 400);
                }
            }
            foreach (var age in new[] { 3000, 16_000, 16_382, 16_383, 16_384, 16_385, 20_000, 1_000_000, int.MaxValue })
            {
                rows.Add(LifeDistribution.Weibull, 5, 0.1, age);
                rows.Add(LifeDistribution.Weibull, 5, 0.02, age);
            }
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(LongGone))]
    public void A_unit_long_gone_is_a_gap_until_the_next_is_there(LifeDistribution distribution, double centre, double tau, int age)
    {
        var unit = new RemainingLife(centre, 1, tau, age);
        var rule = new ReorderRule();

        foreach (RemainingLife[] units in new[] { [unit], [unit, unit], new[] { unit, unit, unit } })
        {
            var question = Question(distribution, units);
            var answer = rule.Answer(question);
            var days = new int?[] { null };
            rule.HairEndQuantiles(question, [0.999], days);

            Assert.Equal(1, answer.GapIfOrderedToday, 1e-6);
            Assert.Equal((null, false), (answer.ReorderInDays, answer.IsPastSight));
            Assert.Equal(DaysUntilReady(), answer.ExpectedDaysWithoutHair, 1.6);
            Assert.InRange(days[0] ?? int.MaxValue, 0, 2);
            Assert.Equal(1, rule.GapChanceBeforeOrderInFlight(question with { InFlight = [new(unit, LeadDays, AlwaysOpen)] }, 1), 1e-6);
        }
    }

    [Theory]
    [InlineData(LifeDistribution.Weibull, 1e-4, 400)]
    [InlineData(LifeDistribution.LogNormal, 1e-160, 400)]
    [InlineData(LifeDistribution.Weibull, 0.1, 16_384)]
    [InlineData(LifeDistribution.Weibull, 0.1, 1_000_000)]
    public void Beside_a_sound_one_it_adds_nothing(LifeDistribution distribution, double tau, int age)
    {
        var (sound, gone) = (new RemainingLife(5.5, 1, 0.13, 60), new RemainingLife(5, 1, tau, age));
        var rule = new ReorderRule();
        var (alone, both) = (rule.Answer(Question(distribution, [sound])), rule.Answer(Question(distribution, [gone, sound])));

        Assert.Equal(alone.GapIfOrderedToday, both.GapIfOrderedToday, 1e-4);
        Assert.Equal(alone.ReorderInDays, both.ReorderInDays);
        Assert.Equal(both.GapIfOrderedToday, rule.Answer(Question(distribution, [sound, gone])).GapIfOrderedToday, 1e-9);
    }

    // By the formulas of the distributions, for lives so long that forty years of wear are few.
    [Theory]
    [InlineData(15_300)]
    [InlineData(16_000)]
    [InlineData(16_383)]
    [InlineData(30_000)]
    public void One_that_wears_for_a_century_is_no_more_worn_out_after_forty_years(int age)
    {
        double Gone(double days) => 1 - Math.Exp(Math.Pow(age / 36_500.0, 3) - Math.Pow((age + days) / 36_500, 3));
        var unit = new RemainingLife(Math.Log(36_500), 1, 1 / 3.0, age);
        var expected = OverLeadTimes(Gone);

        Assert.Equal(expected, new ReorderRule().Answer(Question(LifeDistribution.Weibull, [unit])).GapIfOrderedToday, 1e-6);
        Assert.InRange(
            new ReorderRule().Answer(Question(LifeDistribution.Weibull, [unit, unit])).GapIfOrderedToday,
            0,
            LeadDays.Never + 1e-5
        );
    }

    // A log-normal's hazard falls in the end: what has lasted so long lasts on, and the day it ends lies far beyond most lives.
    [Theory]
    [InlineData(3.4, 0.3, 16_000)]
    [InlineData(3.4, 0.3, 400)]
    [InlineData(5, 0.3, 20_000)]
    public void A_log_normal_unit_of_any_age_is_told_alike_alone_and_in_a_sum(double centre, double tau, int age)
    {
        var population = new PopulationParameters(LifeDistribution.LogNormal, Math.Log(tau), [], centre, 0, 0, 0);
        var life = new LifePrediction(population, ClientEffectNodes.For(population), RowLocationScale.Plain);
        var (unit, gone) = (new RemainingLife(centre, 1, tau, age), new RemainingLife(1, 1, 1e-160, 400));
        var expected = OverLeadTimes(days => 1 - life.SurvivalGiven(age, days));

        var alone = new ReorderRule().Answer(Question(LifeDistribution.LogNormal, [unit]));
        var both = new ReorderRule().Answer(Question(LifeDistribution.LogNormal, [unit, gone]));

        Assert.Equal(expected, alone.GapIfOrderedToday, 1e-6);
        Assert.Equal(expected, both.GapIfOrderedToday, 1e-4);
        Assert.Equal(alone.ExpectedDaysWithoutHair, both.ExpectedDaysWithoutHair, 0.05);
    }

    // What never comes is a gap as surely as the hair is gone at the end of sight.
    private static double OverLeadTimes(Func<double, double> gone) =>
        LeadDays.Never * gone(1023)
        + Enumerable.Range(0, 730).Sum(day => (LeadDays.Survival(day - 1) - LeadDays.Survival(day)) * gone(day + Preparation));

    // Within the year that is looked at.
    private static double DaysUntilReady() => Preparation + Enumerable.Range(0, 365 - Preparation).Sum(day => Lead.Survival(day + 0.5));

    private static ReorderInput Question(LifeDistribution distribution, IReadOnlyList<RemainingLife> units)
    {
        var sure = new PopulationParameters(distribution, 0, [], 0, 0, 0, 0);
        return new ReorderInput(distribution, ClientEffectNodes.For(sure).Reduced(), units, [], LeadDays, AlwaysOpen, Preparation);
    }
}
