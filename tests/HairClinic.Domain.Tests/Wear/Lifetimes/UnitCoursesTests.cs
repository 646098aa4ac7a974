using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Duds and repairs, in the prediction and in the plan: against units drawn one by one with a fixed seed.</summary>
public sealed class UnitCoursesTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly UnitCourses Courses = new(0.12, 0.5, 0.4);

    [Fact]
    public void What_a_dud_lacks_is_the_normal_cut_to_its_range()
    {
        // Moments of N(0.5, 0.3²) cut to (0, 1.5), by a sum over a fine grid.
        double[] grid = [.. Enumerable.Range(0, 15_000).Select(i => (i + 0.5) / 10_000)];
        var total = grid.Sum(Density);

        for (var power = 0; power <= 5; power++)
        {
            var moment = grid.Sum(d => Math.Pow(d, power) * Density(d)) / total;
            Assert.Equal(moment, DudDrop.Unlearnt.Nodes.Sum(n => n.Share * Math.Pow(n.Drop, power)), 1e-5);
        }

        static double Density(double d) => Math.Exp(-(d - 0.5) * (d - 0.5) / 0.18);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(140)]
    public void A_unit_that_may_be_a_dud_or_be_repaired_lasts_as_such_units_do(int age)
    {
        var left = Draw(age, 150_000, new Random(11));
        var prediction = new LifePrediction(Known, ClientEffectNodes.For(Known), Window.Place, 0, Shape(repaired: false), default);
        var unit = new RemainingLife(Window.Centre, Window.Width, Window.Sigma, age) { Shape = Shape(repaired: false) };

        foreach (var days in new[] { 10, 40, 80, 120, 160 })
        {
            var share = left.Count(l => l > days) / (double)left.Count;
            Assert.Equal(share, prediction.SurvivalGiven(age, days), 0.005);
            Assert.Equal(share, 1 - GapOn(unit, days), 0.005);
        }
        Assert.Equal(left.Order().ElementAt(left.Count / 2), prediction.RemainingQuantile(age, 0.5), 2.0);
    }

    [Fact]
    public void A_repaired_unit_lives_by_its_own_clock()
    {
        var clock = new RepairClock(100, 0.5);
        var prediction = new LifePrediction(Known, ClientEffectNodes.For(Known), Window.Place, 0, Shape(repaired: true), clock);
        var plain = new LifePrediction(Known, ClientEffectNodes.For(Known), Window.Place, 0, Shape(repaired: true), default);
        var unit = new RemainingLife(Window.Centre, Window.Width, Window.Sigma, 130) { Shape = Shape(repaired: true), Clock = clock };

        var own = 100 + 30 * Math.Exp(0.5);
        Assert.Equal(own, clock.AgeAfter(130), 1e-12);
        Assert.Equal(130, clock.WornDaysAt(own), 1e-12);
        Assert.Equal(plain.SurvivalGiven(own, 20 * Math.Exp(0.5)), prediction.SurvivalGiven(130, 20), 1e-12);
        Assert.Equal(plain.RemainingQuantile(own, 0.5) * Math.Exp(-0.5), prediction.RemainingQuantile(130, 0.5), 1e-6);
        Assert.Equal(prediction.SurvivalGiven(130, 20), 1 - GapOn(unit, 20), 1e-5);
        Assert.Equal(Spell.FromBounds(own, 100 + 60 * Math.Exp(0.5)), clock.Read(Spell.FromBounds(130, 160)));
        Assert.Equal(Spell.RightCensored(90), clock.Read(Spell.RightCensored(90)));
    }

    // One repaired of nine that ended, and of none: the practice's own share, drawn to one in ten.
    [Theory]
    [InlineData(0, 0, 0.1)]
    [InlineData(1, 10, 0.1)]
    [InlineData(29, 50, 0.5)]
    public void The_chance_of_a_repair_is_that_of_the_units_that_ended(int repaired, int ended, double chance) =>
        Assert.Equal(chance, UnitCourses.RepairChanceFrom(repaired, ended), 1e-12);

    private static PopulationParameters Known => new(LifeDistribution.Weibull, 0, [], 0, 0, 0, 50);

    private static LifeShape Shape(bool repaired) =>
        LifeShape.Create(LifeDistribution.Weibull, [.. Courses.Apply(LifePrediction.BranchesOfScale(Known, Window.Sigma, 0), repaired)]);

    // Units one by one: is it a dud, when is it repaired, how long does it last; kept are those neither ended nor repaired by that age.
    private static List<double> Draw(int age, int count, Random dice)
    {
        var left = new List<double>();
        while (left.Count < count)
        {
            var log = Window.Centre + Window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble()));
            if (dice.NextDouble() < Courses.DudShare)
            {
                double drop;
                do drop = 0.5 + 0.3 * Normal();
                while (drop is <= 0 or >= 1.5);
                log -= drop;
            }
            var life = Math.Exp(log);
            var at =
                dice.NextDouble() < Courses.RepairChance ? new[] { 0.36, 0.49, 0.61, 0.74 }[dice.Next(4)] * life : double.PositiveInfinity;
            var lasts = at < life ? at + (life - at) * Math.Exp(-Courses.RepairRate) : life;
            if (Math.Min(at, life) > age)
                left.Add(lasts - age);
        }
        return left;

        double Normal() => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
    }

    // The chance that the unit is worn out before one is ready that comes at once and takes so long to prepare.
    private static double GapOn(RemainingLife unit, int days)
    {
        var gap = new double[1];
        new ReorderRule(800).GapByOrderDay(
            new ReorderInput(
                LifeDistribution.Weibull,
                ClientEffectNodes.For(Known),
                [unit],
                [],
                LeadTimeTable.FromLeadTime(LeadTime.Learn(new(1e-9, 1.1e-9), [], []), 0, 0, 400),
                new WorkshopWorkingDays(new LocalDate(2027, 3, 1), [], 800),
                days
            ),
            gap
        );
        return gap[0];
    }
}
