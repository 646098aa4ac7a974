using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Mixtures of lives, looked up in a table: against their closed forms, and against draws of what they stand for.</summary>
public sealed class LifeShapeTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);

    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.LogNormal)]
    public void One_branch_is_the_distribution_itself(LifeDistribution distribution)
    {
        var plain = new RemainingLife(5.4, 0.4, 0.12, 90);
        var shaped = plain with { Shape = LifeShape.Create(distribution, [new(1, 0, 0.12)]) };

        foreach (var (expected, gap) in Gaps(distribution, plain).Zip(Gaps(distribution, shaped)))
            Assert.Equal(expected, gap, 1e-6);
    }

    [Fact]
    public void A_mixture_is_the_sum_of_its_branches()
    {
        LifeBranch[] branches = [new(0.5, 0, 0.1), new(0.3, -0.5, 0.1), new(0.2, 0.1, 0.15)];
        var shape = LifeShape.Create(LifeDistribution.Weibull, branches);

        for (var days = 20; days < 500; days += 7)
        {
            var expected = branches.Sum(b => b.Weight * Math.Exp(-Math.Exp((Math.Log(days) - 5.4 - b.Shift) / b.Tau)));
            Assert.Equal(expected, SurvivalOf(shape, age: 0, days), 2e-6);
        }
    }

    // A unit that is still to take a course is known to reach it: of those drawn, those that did not end nor took it by its age are kept.
    [Fact]
    public void A_course_still_to_come_is_taken_only_by_units_that_reach_it()
    {
        var (stretch, at, chance, age) = (0.8, 0.5, 0.3, 110);
        var shape = LifeShape.Create(
            LifeDistribution.Weibull,
            [new(1 - chance, 0, Window.Sigma), new(chance, Math.Log(stretch), Window.Sigma, stretch / at)]
        );
        var dice = new Random(5);
        var left = new List<double>();
        while (left.Count < 200_000)
        {
            var life = Math.Exp(Window.Centre + Window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble())));
            var takes = dice.NextDouble() < chance;
            if (takes ? at * life > age : life > age)
                left.Add((takes ? stretch * life : life) - age);
        }

        foreach (var days in new[] { 20, 60, 90, 120, 160 })
            Assert.Equal(left.Count(l => l > days) / (double)left.Count, SurvivalOf(shape, age, age + days, Window.Centre), 0.004);
    }

    [Fact]
    public void A_unit_past_any_curve_is_worn_out()
    {
        var worn = new RemainingLife(4, 0.4, 0.01, 900) { Shape = LifeShape.Create(LifeDistribution.Weibull, [new(1, 0, 0.01)]) };

        Assert.Equal(1, Gaps(LifeDistribution.Weibull, worn)[0], 1e-9);
    }

    [Fact]
    public void Branches_that_are_none_are_refused()
    {
        Assert.Throws<ArgumentException>(() => LifeShape.Create(LifeDistribution.Weibull, []));
        Assert.Throws<ArgumentException>(() => LifeShape.Create(LifeDistribution.Weibull, [new(0.5, 0, 0.1)]));
        Assert.Throws<ArgumentException>(() => LifeShape.Create(LifeDistribution.Weibull, [new(1, 0, 0)]));
        Assert.Throws<ArgumentException>(() => LifeShape.Create(LifeDistribution.Weibull, [new(1, 0, 0.1, 0.5)]));
    }

    // Through the plan itself: an order of a known lead, made on each day.
    private static double[] Gaps(LifeDistribution distribution, RemainingLife unit)
    {
        var gaps = new double[200];
        new ReorderRule(800).GapByOrderDay(Question(distribution, unit), gaps);
        return gaps;
    }

    private static double SurvivalOf(LifeShape shape, int age, double days, double centre = 5.4)
    {
        var unit = new RemainingLife(centre, 0, 0.1, age) { Shape = shape };
        // A gap where the unit ends before an order that is here at once and ready after that many days.
        var gap = new double[1];
        new ReorderRule(800).GapByOrderDay(Question(LifeDistribution.Weibull, unit, (int)days - age), gap);
        return 1 - gap[0];
    }

    private static ReorderInput Question(LifeDistribution distribution, RemainingLife unit, int preparation = 14)
    {
        var sure = new PopulationParameters(distribution, 0, [], 0, 0, 0, 0);
        return new ReorderInput(
            distribution,
            ClientEffectNodes.For(sure),
            [unit],
            [],
            LeadTimeTable.FromLeadTime(LeadTime.Learn(new(1e-9, 1.1e-9), [], []), 0, 0, 400),
            new WorkshopWorkingDays(new LocalDate(2027, 3, 1), [], 800),
            preparation
        );
    }
}
