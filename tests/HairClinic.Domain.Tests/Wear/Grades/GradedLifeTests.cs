using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>The life that is left given age and grades, as pages predict it and as orders are planned by it: against the definition, integrated by brute force.</summary>
public sealed class GradedLifeTests
{
    private const int Age = 90;
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly GradeLook[] Steady = [new(30, false, false), new(60, false, false), new(90, false, false)];
    private static readonly GradeLook[] Bad = [new(30, true, false), new(60, true, true), new(90, true, true)];

    public static TheoryData<bool> Both => [false, true];

    [Theory]
    [MemberData(nameof(Both))]
    public void A_prediction_is_weighed_day_by_day_with_what_the_grades_say(bool bad)
    {
        var looks = bad ? Bad : Steady;
        var graded = ByAge().WithGrades(Age, Weights(looks));

        Assert.Equal(1, graded.SurvivalGiven(Age, 0));
        foreach (var days in new[] { 1, 10, 40, 100, 160 })
            Assert.Equal(Left(looks, Age + days) / Left(looks, Age), graded.SurvivalGiven(Age, days), 2e-4);
        foreach (var share in new[] { 0.1, 0.5, 0.9 })
            Assert.Equal(1 - share, graded.SurvivalGiven(Age, graded.RemainingQuantile(Age, share)), 1e-9);
    }

    // The planner sums each value of the client's effect by itself, and weighs the values with how likely they make the grades.
    [Theory]
    [MemberData(nameof(Both))]
    public void An_order_is_planned_by_the_same(bool bad)
    {
        var looks = bad ? Bad : Steady;
        var population = PopulationParameters.FromPriors(Window);
        // The client's effect with the unit's age among their rows, as orders are planned.
        var rows = LifetimeFitRows.Create([Spell.RightCensored(Age)], [], [Window.Place], [0]);
        var unit = new RemainingLife(Window.Centre, Window.Width, Window.Sigma, Age) { Grades = Weights(looks) };
        var question = new ReorderInput(
            LifeDistribution.Weibull,
            ClientEffectNodes.For(population, rows),
            [unit],
            [],
            LeadTimeTable.FromLeadTime(LeadTime.Learn(new LeadTimePrior(56, 77), [], []), 0, 0, 400),
            new WorkshopWorkingDays(new(2026, 3, 2), [], 400),
            0
        );
        Span<int?> days = [null, null, null];

        new ReorderRule().HairEndQuantiles(question, [0.1, 0.5, 0.9], days);

        foreach (var (day, share) in days.ToArray().Zip([0.1, 0.5, 0.9]))
        {
            Assert.True(1 - Left(looks, Age + day!.Value) / Left(looks, Age) >= share - 2e-3);
            Assert.True(1 - Left(looks, Age + day.Value - 1) / Left(looks, Age) <= share + 2e-3);
        }
    }

    [Fact]
    public void Bad_grades_early_shorten_what_is_left_and_grades_that_say_nothing_leave_it()
    {
        var byAge = ByAge();
        var nothing = byAge.WithGrades(Age, Weights([]));

        Assert.True(byAge.WithGrades(Age, Weights(Bad)).RemainingQuantile(Age, 0.5) < 0.85 * byAge.RemainingQuantile(Age, 0.5));
        foreach (var days in new[] { 1, 30, 100 })
            Assert.Equal(byAge.SurvivalGiven(Age, days), nothing.SurvivalGiven(Age, days), 1e-9);
        Assert.Same(byAge, byAge.WithGrades(Age, Weights(Bad)).WithoutGrades);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void An_age_is_a_number_of_days(double age) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new GradeWeights(Curve([]), age));

    private static LifePrediction ByAge()
    {
        var population = PopulationParameters.FromPriors(Window);
        return new(population, ClientEffectNodes.For(population), Window.Place);
    }

    private static GradeWeights Weights(GradeLook[] looks) => new(Curve(looks), Age);

    private static GradeCurve Curve(GradeLook[] looks) => new GradeCurveBuilder(GradeLink.Usual, Window).Build(UnitGrades.FromLooks(looks));

    private static double Left(GradeLook[] looks, double from) =>
        GaussLegendreRule.Integrate(
            x => GradesByDefinition.WindowDensity(Window, x) * GradesByDefinition.Mixed(GradeLink.Usual, Window, looks, x),
            Math.Log(from),
            Window.Centre + 0.9,
            64
        );
}
