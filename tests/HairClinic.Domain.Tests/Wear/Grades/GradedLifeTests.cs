using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>The life that is left given age and grades: against adaptive quadrature, a brute-force posterior, and in simulation.</summary>
public sealed class GradedLifeTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly GradeLook[] Steady = [new(31, false, false), new(90, true, false), new(124, true, false)];
    private static readonly GradeLook[] Bad = [new(30, true, false), new(60, true, true), new(90, true, true)];

    [Theory]
    [InlineData(LifeDistribution.Weibull, 182, 273, 1e-6)]
    [InlineData(LifeDistribution.LogNormal, 182, 273, 1e-6)]
    [InlineData(LifeDistribution.Weibull, 28, 60, 1e-4)]
    public void Day_by_day_it_is_the_integral(LifeDistribution distribution, double low, double high, double tolerance)
    {
        var window = WindowPrior.FromWindow(distribution, low, high);
        var shrink = low / 182;
        GradeLook[] looks = [.. Steady.Select(look => look with { WornDays = Math.Round(look.WornDays * shrink) })];
        var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.FromLooks(looks));
        foreach (var age in new[] { 0, looks[^1].WornDays, Math.Round(1.4 * low) })
        {
            var life = new GradedLifeByDay(curve, age);
            foreach (var (away, scale) in new[] { (0.0, 0.0), (-0.2, -0.5), (0.3, 0.3) })
            {
                var (centre, tau) = (window.Centre + away, window.Sigma * Math.Exp(scale));
                var survival = new double[600];
                var whole = Integral(curve, window, centre, tau, age);

                // So old for its centre that hardly one in ten thousand is, it ends within days: less is asked for.
                Assert.Equal(Math.Log(whole), life.Fill(centre, tau, survival), whole > 1e-4 ? 10 * tolerance : 1e-3);
                Assert.Equal(1, survival[0], 1e-12);
                foreach (var day in new[] { 1, 2, 10, 30, 60, 100, 200, 599 })
                    Assert.Equal(Integral(curve, window, centre, tau, age + day) / whole, survival[day], whole > 1e-4 ? tolerance : 1e-3);
            }
        }
    }

    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.LogNormal)]
    public void Without_grades_it_is_the_usual_prediction(LifeDistribution distribution)
    {
        var window = WindowPrior.FromWindow(distribution, 182, 273);
        var population = PopulationParameters.FromPriors(window) with { LogScale = -0.2, PracticeMean = 0.1 };
        var client = ClientEffectNodes.For(population);
        var usual = new LifePrediction(population, client, window.Place, 0.05);
        var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.None);
        foreach (var age in new[] { 0.0, 80, 250, 1200 })
        {
            var graded = new GradedLifePrediction(population, client, window.Place, 0.05, new GradedLifeByDay(curve, age));

            foreach (var days in new[] { 1, 7, 40, 150, 400 })
                Assert.Equal(usual.SurvivalGiven(age, days), graded.Survival(days), 1e-9);
            if (age > 1000)
                continue;
            // Between whole days it is a straight line.
            Assert.Equal(usual.RemainingQuantile(age, 0.5), graded.Median, 0.02);
            Assert.Equal(usual.RemainingQuantile(age, 0.1), graded.Band.From, 0.02);
            Assert.Equal(usual.RemainingQuantile(age, 0.9), graded.Band.To, 0.02);
        }
    }

    // Over the client's effect by a fine grid, and over x by the definition of p̃.
    [Fact]
    public void A_clients_effect_is_weighed_with_the_units_age_and_grades()
    {
        var population = PopulationParameters.FromPriors(Window);
        var client = ClientEffectNodes.For(population);
        var curve = new GradeCurveBuilder(GradeLink.Usual, Window).Build(UnitGrades.FromLooks(Bad));
        var life = new GradedLifeByDay(curve, 90);
        var graded = new GradedLifePrediction(population, client, Window.Place, 0, life);

        double Left(double from) =>
            GaussLegendreRule.Integrate(
                x => GradesByDefinition.WindowDensity(Window, x) * GradesByDefinition.Mixed(GradeLink.Usual, Window, Bad, x),
                Math.Log(from),
                Window.Centre + 0.9,
                64
            );
        foreach (var days in new[] { 10, 40, 100 })
            Assert.Equal(Left(90 + days) / Left(90), graded.Survival(days), 1e-5);
    }

    [Fact]
    public void Where_the_rows_hold_the_unit_it_is_not_weighed_again()
    {
        var population = PopulationParameters.FromPriors(Window);
        var client = ClientEffectNodes.For(population).Reduced();
        var life = new GradedLifeByDay(new GradeCurveBuilder(GradeLink.Usual, Window).Build(UnitGrades.FromLooks(Bad)), 90);
        var (once, again) = (
            new GradedLifePrediction(population, client, Window.Place, 0, life, amongRows: true),
            new GradedLifePrediction(population, client, Window.Place, 0, life)
        );
        var sure = new GradedLifePrediction(
            population with
            {
                ClientSpread = 0,
                PracticeVariance = 0,
            },
            Point(population),
            Window.Place,
            0,
            life
        );
        var survival = new double[101];
        life.Fill(Window.Centre, Window.Sigma, survival);

        Assert.True(once.Median > again.Median + 5);
        Assert.Equal(survival[100], sure.Survival(100), 1e-12);
        Assert.Equal(survival[40] + 0.5 * (survival[41] - survival[40]), sure.Survival(40.5), 1e-12);
    }

    [Fact]
    public void Early_bad_grades_shorten_what_is_left_and_good_ones_narrow_its_band()
    {
        var population = PopulationParameters.FromPriors(Window);
        var client = ClientEffectNodes.For(population);
        var builder = new GradeCurveBuilder(GradeLink.Usual, Window);
        GradedLifePrediction Of(params GradeLook[] looks) =>
            new(population, client, Window.Place, 0, new GradedLifeByDay(builder.Build(UnitGrades.FromLooks(looks)), 90));
        var (by, good, bad) = (Of(), Of(new(60, false, false), new(90, false, false)), Of(Bad));

        Assert.InRange(bad.Median / by.Median, 0.5, 0.85);
        Assert.True(bad.Band.From < by.Band.From / 3);
        Assert.True(bad.Band.To < by.Band.To);
        Assert.True(good.Median > by.Median);
        Assert.True(good.Band.To - good.Band.From < by.Band.To - by.Band.From);
        Assert.Equal(0, bad.Survival(5000));
        var survival = new double[4000];
        bad.SurvivalByDay(survival);
        Assert.Equal((1, bad.Survival(33), 0), (survival[0], survival[33], survival[^1]));
    }

    // Every seventh unit may be a dud that lasts 0.6 times as long; x by the definition, the client's effect by a fine grid.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Whether_it_is_one_of_the_duds_its_grades_tell(bool amongRows)
    {
        LifeShift[] shifts = [new(0, 0.86), new(Math.Log(0.6), 0.14)];
        var population = PopulationParameters.FromPriors(Window);
        // Where the rows hold the unit the effect is one number here, so that nothing of it is left to weigh.
        var client = amongRows ? Point(population) : ClientEffectNodes.For(population);
        var life = new GradedLifeByDay(new GradeCurveBuilder(GradeLink.Usual, Window).Build(UnitGrades.FromLooks(Bad)), 90);
        var graded = new GradedLifePrediction(population, client, Window.Place, 0, life, amongRows, shifts);
        var plain = new GradedLifePrediction(population, client, Window.Place, 0, life, amongRows);

        double Density(double x) =>
            amongRows
                ? GradesByDefinition.Density(LifeDistribution.Weibull, x, Window.Centre, Window.Sigma)
                : GradesByDefinition.WindowDensity(Window, x);
        double Left(double from) =>
            GaussLegendreRule.Integrate(
                x =>
                    shifts.Sum(shift => shift.Share * Density(x - shift.LogDays))
                    * GradesByDefinition.Mixed(GradeLink.Usual, Window, Bad, x),
                Math.Log(from),
                Window.Centre + 0.9,
                128
            );
        foreach (var days in new[] { 10, 40, 100 })
            Assert.Equal(Left(90 + days) / Left(90), graded.Survival(days), 1e-5);
        Assert.True(graded.Median < 0.6 * plain.Median);
    }

    // Of 1,500 units, each asked at a look of its own after which it still wore; entries as the model has them. Common practice, no source.
    [Fact]
    public void Four_in_five_lives_end_within_the_band()
    {
        var population = PopulationParameters.FromPriors(Window);
        var client = ClientEffectNodes.For(population).Reduced(9);
        var builder = new GradeCurveBuilder(GradeLink.Usual, Window);
        var (inside, below, asked, narrower) = (0, 0, 0, 0);
        foreach (var (unit, life) in Draws.Units(Window, 1500, Writing.AsModelled, 41, ended: 1))
        {
            if (unit.Grades.Looks < 3)
                continue;
            var grades = unit.Grades.Until(2 + asked % (unit.Grades.Looks - 1));
            var age = grades.LastDay;
            GradedLifePrediction After(UnitGrades seen) =>
                new(population, client, Window.Place, 0, new GradedLifeByDay(builder.Build(seen), age));
            var ((from, to), byAge) = (After(grades).Band, After(UnitGrades.None).Band);
            asked++;
            inside += life - age >= from && life - age <= to ? 1 : 0;
            below += life - age < from ? 1 : 0;
            narrower += to - from < byAge.To - byAge.From ? 1 : 0;
        }

        Assert.InRange(asked, 1200, 1500);
        Assert.InRange(100.0 * inside / asked, 76, 84);
        Assert.InRange(100.0 * below / asked, 7, 13);
        Assert.True(narrower > asked / 2);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void An_age_is_no_less_than_nothing(double age)
    {
        var curve = new GradeCurveBuilder(GradeLink.Usual, Window).Build(UnitGrades.None);

        Assert.Throws<ArgumentOutOfRangeException>(() => new GradedLifeByDay(curve, age));
    }

    // All on one effect: neither people nor practice vary.
    private static ClientEffectNodes Point(PopulationParameters population) =>
        ClientEffectNodes.For(population with { ClientSpread = 0, PracticeVariance = 0 });

    private static double Integral(GradeCurve curve, WindowPrior window, double centre, double tau, double age)
    {
        var low = age == 0 ? centre - 26 * tau : Math.Max(Math.Log(age), centre - 26 * tau);
        var (sum, step) = (0.0, 0.02);
        // In a tail that long nothing is left of what matters here.
        for (var x = low; x < Math.Max(centre + 8 * tau, low + 2 * tau); x += step)
        {
            sum += GaussKronrodRule.Integrate(
                at => GradesByDefinition.Density(window.Distribution, at, centre, tau) * curve.At(at),
                x,
                x + step,
                out _,
                out _,
                1e-10,
                8
            );
        }
        return sum;
    }
}
