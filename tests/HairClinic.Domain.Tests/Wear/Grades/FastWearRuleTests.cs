using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>When a unit is said to wear faster than its age. Common practice, no source.</summary>
public sealed class FastWearRuleTests
{
    private const double Alpha = 0.05;

    [Theory]
    [InlineData(0.06, 140, 0.25, 80, true)]
    // Not four times what is accepted.
    [InlineData(0.06, 140, 0.19, 80, false)]
    [InlineData(0.06, 140, 0.20, 80, true)]
    // The age alone says half of it.
    [InlineData(0.13, 140, 0.25, 80, false)]
    [InlineData(0.125, 140, 0.25, 80, true)]
    // The unit is not expected to last much less than its age says.
    [InlineData(0.06, 140, 0.25, 105, false)]
    [InlineData(0.06, 140, 0.25, 104, true)]
    [InlineData(0.06, 140, 0.03, 170, false)]
    public void It_is_said_where_the_grades_move_the_outlook_and_it_matters(
        double byAge,
        double medianByAge,
        double byGrades,
        double medianByGrades,
        bool warns
    ) => Assert.Equal(warns, FastWearRule.Warns(new(byAge, medianByAge), new(byGrades, medianByGrades), Alpha));

    [Fact]
    public void Without_grades_nothing_is_said()
    {
        var outlook = new WearOutlook(0.6, 20);

        Assert.False(FastWearRule.Warns(outlook, outlook, Alpha));
    }

    // Every seventh unit lasts less than half as long; the order was placed on its last day, and what comes within 70 days is in time.
    [Fact]
    public void It_names_units_that_end_too_soon_and_few_that_do_not()
    {
        const int OrderedOn = 88;
        const int Ready = 70;
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
        var population = PopulationParameters.FromPriors(window);
        var client = ClientEffectNodes.For(population).Reduced();
        var builder = new GradeCurveBuilder(GradeLink.Usual, window);
        var sound = Draws.Units(window, 1400, Writing.Honest, 11, ended: 1);
        var duds = Draws.Units(WindowPrior.FromWindow(LifeDistribution.Weibull, 0.45 * 182, 0.45 * 273), 240, Writing.Honest, 12, ended: 1);
        var (soon, named, later, falsely) = (0, 0, 0, 0);
        foreach (var (unit, life) in sound.Concat(duds))
        {
            if (life <= OrderedOn)
                continue;
            var warned = Enumerable.Range(1, unit.Grades.Looks).Any(n => WarnsAfter(unit.Grades.Until(n)));
            var tooSoon = life < OrderedOn + Ready;
            (soon, named) = (soon + (tooSoon ? 1 : 0), named + (tooSoon && warned ? 1 : 0));
            (later, falsely) = (later + (tooSoon ? 0 : 1), falsely + (!tooSoon && warned ? 1 : 0));
        }

        Assert.InRange(soon, 150, 300);
        Assert.InRange(100.0 * named / soon, 20, 60);
        Assert.InRange(100.0 * falsely / later, 0, 5);

        bool WarnsAfter(UnitGrades grades)
        {
            var age = grades.LastDay;
            if (age < OrderedOn || age >= OrderedOn + Ready)
                return false;
            WearOutlook Of(UnitGrades seen)
            {
                var left = new LifePrediction(population, client, window.Place).WithGrades(age, new GradeWeights(builder.Build(seen), age));
                return new(1 - left.SurvivalGiven(age, OrderedOn + Ready - age), left.RemainingQuantile(age, 0.5));
            }
            return FastWearRule.Warns(Of(UnitGrades.None), Of(grades), Alpha);
        }
    }
}
