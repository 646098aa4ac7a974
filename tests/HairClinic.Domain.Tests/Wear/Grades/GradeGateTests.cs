using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>Grades are used once they tell of ends, and never where they do not: on 300 drawn units. Common practice, no source.</summary>
public sealed class GradeGateTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);

    [Theory]
    [InlineData(Writing.Random, 1)]
    [InlineData(Writing.Random, 2)]
    [InlineData(Writing.Zero, 1)]
    [InlineData(Writing.Zero, 2)]
    [InlineData(Writing.Copied, 1)]
    [InlineData(Writing.Copied, 2)]
    public void Grades_that_mean_nothing_do_not_count(Writing writing, int seed)
    {
        var (gate, fit) = Weigh(Draws.Units(Window, 300, writing, seed));

        Assert.True(fit.Converged);
        Assert.True(gate.Ended > 100);
        Assert.False(gate.IsOpen, $"evidence {gate.Evidence}");
        Assert.InRange(gate.Evidence, -20, 3);
    }

    // Not what was learnt, but what is assumed, of grades that mean nothing: they lose by far.
    [Theory]
    [InlineData(Writing.Random)]
    [InlineData(Writing.Zero)]
    [InlineData(Writing.Copied)]
    public void Believed_as_they_stand_they_speak_against_themselves(Writing writing)
    {
        var units = Draws.Units(Window, 300, writing, 3).Select(drawn => drawn.Unit);

        Assert.True(GradeGate.Weigh(units, GradeLink.Usual).Evidence < -10);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Honest_ones_count_though_a_fifth_is_missing_and_a_third_of_the_rest_is_off(int seed)
    {
        var (gate, fit) = Weigh(Draws.Units(Window, 300, Writing.Honest, seed));

        Assert.True(fit.Converged);
        Assert.True(gate.IsOpen);
        Assert.InRange(gate.Evidence, 8, 60);
    }

    [Fact]
    public void Fourteen_ends_are_too_few_however_clear()
    {
        var units = Enumerable
            .Range(0, 14)
            .Select(i => new GradedUnit(
                Spell.FromBounds(100 + 12 * i, 104 + 12 * i),
                Window,
                Window.Centre,
                Window.Sigma,
                // Grade 2 at 0.75 of each life, seen within days.
                UnitGrades.FromLooks([.. Enumerable.Range(1, 20).Select(j => new GradeLook(j * (5 + 0.6 * i), j * 5 >= 45, j * 5 >= 75))])
            ))
            .ToList();
        var gate = GradeGate.Weigh(units, GradeLink.Usual);

        Assert.Equal(14, gate.Ended);
        Assert.True(gate.Evidence > GradeGate.LeastEvidence);
        Assert.False(gate.IsOpen);
        Assert.True(GradeGate.Weigh(units.Append(units[3]), GradeLink.Usual).IsOpen);
    }

    [Fact]
    public void Units_without_grades_and_those_still_worn_are_no_ends()
    {
        var running = new GradedUnit(
            Spell.RightCensored(60),
            Window,
            Window.Centre,
            Window.Sigma,
            UnitGrades.FromLooks([new(60, false, false)])
        );
        var bare = running with { Life = Spell.FromBounds(150, 180), Grades = UnitGrades.None };

        Assert.Equal(new GradeGate(0, 0), GradeGate.Weigh([bare], GradeLink.Usual));
        Assert.Equal(0, GradeGate.Weigh([running, bare], GradeLink.Usual).Ended);
    }

    // One look, then an end: how much likelier the end became by it, among lives as long as that look; from the definition.
    [Fact]
    public void It_is_how_much_likelier_what_came_was_with_the_grades()
    {
        var unit = new GradedUnit(
            Spell.FromBounds(120, 150),
            Window,
            Window.Centre,
            Window.Sigma,
            UnitGrades.FromLooks([new(60, true, false), new(120, true, true)])
        );
        double Left(double from, double to, params GradeLook[] looks) =>
            MathNet.Numerics.Integration.GaussLegendreRule.Integrate(
                x =>
                    GradesByDefinition.Density(LifeDistribution.Weibull, x, Window.Centre, Window.Sigma)
                    * (looks.Length == 0 ? 1 : GradesByDefinition.Mixed(GradeLink.Usual, Window, looks, x)),
                Math.Log(from),
                Math.Log(to),
                64
            );
        GradeLook one = new(60, true, false);
        GradeLook two = new(120, true, true);
        var expected =
            Math.Log(Left(120, 420, one) / Left(60, 420, one) / (Left(120, 420) / Left(60, 420)))
            + Math.Log(Left(120, 150, one, two) / Left(120, 420, one, two) / (Left(120, 150) / Left(120, 420)));

        Assert.Equal(expected, GradeGate.Weigh([unit], GradeLink.Usual).Evidence, 1e-5);
    }

    private static (GradeGate Gate, GradeLinkFit Fit) Weigh(List<(GradedUnit Unit, double Life)> drawn)
    {
        var units = drawn.ConvertAll(d => d.Unit);
        var fit = GradeLinkFitter.Fit(units);
        return (GradeGate.Weigh(units, fit.Link), fit);
    }
}
