using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>The link between grades and lives comes back from units drawn with it. Common practice, no source.</summary>
public sealed class GradeLinkFitterTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);

    // Away from what is assumed, so that the units have to say it.
    private static readonly GradeLink Truth = new(-0.55, -0.18, 0.2, Math.Log(0.18), Math.Log(0.13), -2.4, -0.4);

    [Fact]
    public void It_is_found_again()
    {
        var fit = GradeLinkFitter.Fit(Draws.Units(Window, 700, Writing.AsModelled, 3, truth: Truth).Select(drawn => drawn.Unit));

        Assert.True(fit.Converged);
        Assert.InRange(fit.Iterations, 1, 12);
        Assert.InRange(fit.Units, 600, 700);
        // About three standard errors of so many units.
        Assert.Equal(Truth.SlightShift, fit.Link.SlightShift, 0.06);
        Assert.Equal(Truth.FairShift, fit.Link.FairShift, 0.04);
        Assert.Equal(Truth.Unevenness, fit.Link.Unevenness, 0.2);
        Assert.Equal(Truth.SlightLogSpread, fit.Link.SlightLogSpread, 0.3);
        Assert.Equal(Truth.FairLogSpread, fit.Link.FairLogSpread, 0.35);
        Assert.Equal(Truth.Misread, fit.Link.Misread, 0.03);
        Assert.Equal(Truth.Copied, fit.Link.Copied, 0.08);
    }

    [Fact]
    public void It_is_the_highest_point_and_the_same_every_time()
    {
        var units = Draws.Units(Window, 60, Writing.Honest, 5).Select(drawn => drawn.Unit).ToList();
        var fit = GradeLinkFitter.Fit(units);
        var (low, high) = (
            fit.Link with
            {
                SlightShift = fit.Link.SlightShift - 0.02,
            },
            fit.Link with
            {
                SlightShift = fit.Link.SlightShift + 0.02,
            }
        );

        Assert.Equal(fit, GradeLinkFitter.Fit(units));
        Assert.Equal(fit.LogPosterior, Height(units, fit.Link), 1e-9);
        foreach (var beside in Beside(fit.Link).Append(low).Append(high))
            Assert.True(Height(units, beside) < fit.LogPosterior);
    }

    [Fact]
    public void Nobodys_grades_leave_what_is_assumed()
    {
        var one = new GradedUnit(
            Spell.RightCensored(60),
            Window,
            Window.Centre,
            Window.Sigma,
            UnitGrades.FromLooks([new(60, false, false)])
        );
        var none = one with { Grades = UnitGrades.None };
        var fit = GradeLinkFitter.Fit([one, none]);

        Assert.Equal(new GradeLinkFit(GradeLink.Usual, 0, fit.LogPosterior, 0, true), fit);
    }

    [Fact]
    public void Of_many_units_the_latest_are_enough()
    {
        var unit = Draws.Units(Window, 1, Writing.AsModelled, 8, ended: 1)[0].Unit;

        Assert.Equal(GradeLinkFitter.MostUnits, GradeLinkFitter.Fit(Enumerable.Repeat(unit, GradeLinkFitter.MostUnits + 5)).Units);
    }

    private static IEnumerable<GradeLink> Beside(GradeLink link)
    {
        foreach (var step in new[] { -0.03, 0.03 })
        {
            yield return link with
            {
                FairShift = link.FairShift + step,
            };
            yield return link with
            {
                Unevenness = link.Unevenness + step,
            };
            yield return link with
            {
                SlightLogSpread = link.SlightLogSpread + step,
            };
            yield return link with
            {
                FairLogSpread = link.FairLogSpread + step,
            };
            yield return link with
            {
                MisreadLogit = link.MisreadLogit + 3 * step,
            };
            yield return link with
            {
                CopyLogit = link.CopyLogit + 3 * step,
            };
        }
    }

    // From the definition, but for the rows' integrals, which GradedSpellTests has.
    private static double Height(IEnumerable<GradedUnit> units, GradeLink link)
    {
        var builder = new GradeCurveBuilder(link, Window);
        double Bell(double x, double mean, double spread) => MathNet.Numerics.Distributions.Normal.PDFLn(mean, spread, x);
        return units
                .Where(unit => unit.Grades.Looks >= 2)
                .Sum(unit => GradedSpell.FromLife(unit.Life, builder.Build(unit.Grades)).LogGradeFactor(unit.Centre, unit.Tau))
            + Bell(link.SlightShift, -0.8, 0.3)
            + Bell(link.FairShift, -0.29, 0.2)
            + Bell(link.Unevenness, 0.15, 0.15)
            + Bell(link.SlightLogSpread, -1.39, 0.4)
            + Bell(link.FairLogSpread, -1.6, 0.4)
            + Bell(link.MisreadLogit, -3, 0.7)
            + Bell(link.CopyLogit, -1.1, 0.8);
    }
}
