using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Integration;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>A row of the fit with grades: against adaptive quadrature (MathNet's Gauss–Kronrod), and against the closed form where they say nothing.</summary>
public sealed class GradedSpellTests
{
    private static readonly GradeLook[] Steady = [new(31, false, false), new(90, true, false), new(124, true, false), new(155, true, true)];
    private static readonly GradeLook[] Bad = [new(31, true, false), new(62, true, true)];

    public static TheoryData<LifeDistribution, double, double, double> Rows
    {
        get
        {
            var rows = new TheoryData<LifeDistribution, double, double, double>();
            foreach (var distribution in new[] { LifeDistribution.Weibull, LifeDistribution.LogNormal })
            {
                foreach (var (scale, tolerance) in new[] { (0.0, 1e-6), (-0.7, 1e-5), (0.4, 1e-6) })
                {
                    foreach (var away in new[] { -0.2, 0, 0.15 })
                        rows.Add(distribution, away, scale, tolerance);
                }
            }
            return rows;
        }
    }

    // What is left of p̃ itself is GradeCurveTests'; here it is taken as the curve has it.
    [Theory]
    [MemberData(nameof(Rows))]
    public void It_is_the_integral(LifeDistribution distribution, double away, double scale, double tolerance)
    {
        var window = WindowPrior.FromWindow(distribution, 182, 273);
        var (centre, tau) = (window.Centre + away, window.Sigma * Math.Exp(scale));
        foreach (var looks in new[] { Steady, Bad })
        {
            var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.FromLooks(looks));
            var last = looks[^1].WornDays;
            foreach (
                var life in new[]
                {
                    Spell.RightCensored(last),
                    Spell.FromBounds(last, last + 31),
                    Spell.FromBounds(last, last + 1),
                    Spell.FromBounds(20, 2000),
                    Spell.LeftCensored(last),
                    Spell.RightCensored(15),
                    Spell.RightCensored(0),
                }
            )
            {
                var log = Math.Log(Integral(curve, window, centre, tau, Log(life.Lower), Log(life.Upper)));
                var found = GradedSpell.FromLife(life, curve).LogLikelihood(centre, tau);
                // So far out that hardly one life in ten thousand is, less is asked for; and less still where there is none at all.
                Assert.Equal(
                    log,
                    found,
                    log > -9 ? tolerance
                        : log > -40 ? 50 * tolerance
                        : 0.02
                );
            }
        }
    }

    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.LogNormal)]
    public void Of_a_known_end_it_is_the_density_times_what_the_grades_say(LifeDistribution distribution)
    {
        var window = WindowPrior.FromWindow(distribution, 182, 273);
        var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.FromLooks(Steady));
        var row = GradedSpell.FromLife(Spell.Exact(201), curve);
        var log = Math.Log(201);
        var expected = Math.Log(GradesByDefinition.Density(distribution, log, 5.4, 0.12) / 201 * curve.At(log));

        Assert.Equal(expected, row.LogLikelihood(5.4, 0.12), 1e-12);
    }

    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.LogNormal)]
    public void Grades_that_say_nothing_leave_value_and_derivatives_as_they_are(LifeDistribution distribution)
    {
        var window = WindowPrior.FromWindow(distribution, 182, 273);
        var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.None);
        Spell[] lives =
        [
            Spell.Exact(180),
            Spell.RightCensored(5),
            Spell.RightCensored(150),
            Spell.RightCensored(400),
            Spell.LeftCensored(170),
            Spell.FromBounds(160, 190),
            Spell.FromBounds(10, 20),
            Spell.FromBounds(10, 3000),
        ];
        foreach (var life in lives)
        {
            var row = GradedSpell.FromLife(life, curve);
            var closed = new LogPosterior(distribution, LifetimeFitRows.Create([life], [], [window.Place]), LifePriors.Flat(0));
            foreach (var (delta, s) in new[] { (0.0, 0.0), (-0.6, 0.2), (0.5, -0.5), (0.1, -0.9) })
            {
                var (gradient, hessian) = (new double[2], new double[4]);
                var (slopes, bends) = (new double[2], new double[3]);
                var expected = closed.Evaluate([delta, s], gradient, hessian);
                var tau = Math.Exp(s) * window.Sigma;
                var (w, found) = (window.Width, row.LogLikelihood(window.Centre + window.Width * delta, tau, slopes, bends));

                Close(expected, found);
                Close(gradient[0], w * slopes[0]);
                Close(gradient[1], slopes[1]);
                Close(hessian[0], w * w * bends[0]);
                Close(hessian[1], w * bends[1]);
                Close(hessian[3], bends[2]);
                Assert.Equal(0, row.LogGradeFactor(window.Centre + w * delta, tau), 1e-9 * (1 + Math.Abs(expected)));
            }
        }
    }

    // Five points, of which the middle one has no weight; Abramowitz and Stegun, table 25.2; from memory.
    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.LogNormal)]
    public void Its_derivatives_are_the_slopes_and_bends_of_the_value(LifeDistribution distribution)
    {
        var window = WindowPrior.FromWindow(distribution, 182, 273);
        foreach (var looks in new[] { Steady, Bad })
        {
            var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.FromLooks(looks));
            var last = looks[^1].WornDays;
            foreach (
                var life in new[]
                {
                    Spell.RightCensored(last),
                    Spell.FromBounds(last, last + 30),
                    Spell.LeftCensored(last),
                    Spell.Exact(last + 9),
                    Spell.FromBounds(20, 2000),
                }
            )
            {
                var row = GradedSpell.FromLife(life, curve);
                foreach (var (centre, logTau) in new[] { (5.4, -2.2), (5.1, -2.5), (5.7, -1.9) })
                    Derivatives(row, centre, logTau);
            }
        }
    }

    [Theory]
    [InlineData(LifeDistribution.Weibull, 0.1)]
    [InlineData(LifeDistribution.Weibull, 0.002)]
    [InlineData(LifeDistribution.LogNormal, 0.1)]
    public void Many_centres_at_once_are_each_as_alone(LifeDistribution distribution, double tau)
    {
        var window = WindowPrior.FromWindow(distribution, 182, 273);
        var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.FromLooks(Steady));
        double[] centres = [.. Enumerable.Range(0, 41).Select(k => window.Centre - 0.5 + 0.025 * k)];
        foreach (var life in new[] { Spell.RightCensored(155), Spell.FromBounds(155, 180), Spell.Exact(160) })
        {
            var row = GradedSpell.FromLife(life, curve);
            var values = new double[centres.Length];
            row.LogLikelihoods(centres, tau, values);

            for (var k = 0; k < centres.Length; k++)
                Close(row.LogLikelihood(centres[k], tau), values[k]);
        }
    }

    [Fact]
    public void However_early_or_late_a_life_was_it_has_a_likelihood()
    {
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
        var curve = new GradeCurveBuilder(GradeLink.Usual, window).Build(UnitGrades.FromLooks(Bad));
        var (slopes, bends) = (new double[2], new double[3]);
        foreach (var life in new[] { Spell.RightCensored(900), Spell.FromBounds(2, 3), Spell.LeftCensored(1), Spell.FromBounds(700, 730) })
        {
            foreach (var (centre, tau) in new[] { (4.0, 0.05), (5.5, 0.02), (7.5, 0.03), (5.5, 0.5) })
            {
                var value = GradedSpell.FromLife(life, curve).LogLikelihood(centre, tau, slopes, bends);
                Assert.All([value, .. slopes, .. bends], number => Assert.False(double.IsNaN(number)));
            }
        }
    }

    private static double Log(double days) => days == 0 ? double.NegativeInfinity : Math.Log(days);

    private static double Integral(GradeCurve curve, WindowPrior window, double centre, double tau, double from, double to)
    {
        // What is left out at either side is less than e^-26 of what is there.
        var (low, high) = (Math.Max(from, Math.Min(to, centre) - 26 * tau), Math.Min(to, Math.Max(centre, from) + 8 * tau));
        var (sum, step) = (0.0, 0.02);
        for (var x = low; x < high; x += step)
        {
            sum += GaussKronrodRule.Integrate(
                at => GradesByDefinition.Density(window.Distribution, at, centre, tau) * curve.At(at),
                x,
                Math.Min(x + step, high),
                out _,
                out _,
                1e-10,
                10
            );
        }
        return sum;
    }

    private static void Derivatives(GradedSpell row, double centre, double logTau)
    {
        const double Step = 1e-3;
        double[] places = [1, -1, 2, -2];
        double[] weights = [8, -8, -1, 1];
        (double[] Slopes, double[] Bends, double Value) Look(double c, double s)
        {
            var (slopes, bends) = (new double[2], new double[3]);
            var value = row.LogLikelihood(c, Math.Exp(s), slopes, bends);
            return (slopes, bends, value);
        }
        var here = Look(centre, logTau);
        var byCentre = Array.ConvertAll(places, place => Look(centre + place * Step / 10, logTau));
        var byScale = Array.ConvertAll(places, place => Look(centre, logTau + place * Step));
        double Slope(
            (double[] Slopes, double[] Bends, double Value)[] around,
            double step,
            Func<(double[] Slopes, double[], double Value), double> of
        ) => around.Zip(weights, (look, weight) => weight * of(look)).Sum() / (12 * step);
        void Same(double expected, double found) =>
            Assert.Equal(expected, found, 2e-7 * (100 + Math.Abs(here.Bends[0]) + Math.Abs(here.Value)));

        Same(Slope(byCentre, Step / 10, look => look.Value), here.Slopes[0]);
        Same(Slope(byScale, Step, look => look.Value), here.Slopes[1]);
        Same(Slope(byCentre, Step / 10, look => look.Slopes[0]), here.Bends[0]);
        Same(Slope(byScale, Step, look => look.Slopes[0]), here.Bends[1]);
        Same(Slope(byScale, Step, look => look.Slopes[1]), here.Bends[2]);
    }

    private static void Close(double expected, double found) => Assert.Equal(expected, found, 1e-9 * (1 + Math.Abs(expected)));
}
