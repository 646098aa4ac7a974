using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>How likely a unit's grades are for each life it may have: against brute force, and against drawing them.</summary>
public sealed class GradeCurveTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly GradeLink Link = GradeLink.Usual with { Unevenness = 0.3, MisreadLogit = -2.2, CopyLogit = -0.5 };

    private static readonly GradeLook[] Steady =
    [
        new(31, false, false),
        new(62, false, false),
        new(90, true, false),
        new(124, true, false),
        new(155, true, true),
    ];

    // Grades that fall back, one threshold without the other, and a look that saw neither.
    private static readonly GradeLook[] Odd =
    [
        new(20, true, null),
        new(50, false, false),
        new(70, null, null),
        new(71, true, true),
        new(110, null, false),
        new(140, false, false),
        new(200, true, true),
    ];

    public static TheoryData<LifeDistribution, double, double, bool> Cases =>
        new()
        {
            { LifeDistribution.Weibull, 182, 273, false },
            { LifeDistribution.Weibull, 182, 273, true },
            { LifeDistribution.LogNormal, 182, 273, false },
            { LifeDistribution.Weibull, 40, 90, true },
            { LifeDistribution.LogNormal, 100, 400, true },
        };

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_is_the_sum_over_every_place_of_the_thresholds(LifeDistribution distribution, double low, double high, bool odd)
    {
        var window = WindowPrior.FromWindow(distribution, low, high);
        var looks = odd ? Odd : Steady;
        var curve = new GradeCurveBuilder(Link, window).Build(UnitGrades.FromLooks(looks));
        var ofWindow = GradesByDefinition.OfWindow(Link, window, looks);

        for (var x = window.Centre - 1.5; x < window.Centre + 1.2; x += 0.0831)
        {
            var expected = 0.9 * GradesByDefinition.Chance(Link, looks, x) + 0.1 * ofWindow;
            Assert.Equal(1, curve.At(x) / expected, 2e-6);
        }
    }

    [Fact]
    public void Narrow_thresholds_are_followed_too()
    {
        var narrow = Link with { SlightLogSpread = Math.Log(0.08), FairLogSpread = Math.Log(0.08) };
        var curve = new GradeCurveBuilder(narrow, Window).Build(UnitGrades.FromLooks(Steady));
        var ofWindow = GradesByDefinition.OfWindow(narrow, Window, Steady);

        for (var x = Window.Centre - 1.5; x < Window.Centre + 1.2; x += 0.0831)
            Assert.Equal(1, curve.At(x) / (0.9 * GradesByDefinition.Chance(narrow, Steady, x) + 0.1 * ofWindow), 1e-4);
    }

    // Every row of entries that could have been written, falling ones among them: their chances add up to one.
    [Fact]
    public void All_that_could_be_written_adds_up_to_one()
    {
        var builder = new GradeCurveBuilder(Link, Window);
        var days = new[] { 35.0, 70, 100, 131 };
        double[] lives = [4.2, 5.0, 5.31, 5.6, 6.4];
        var sums = new double[lives.Length];
        for (var code = 0; code < 1 << (2 * days.Length); code++)
        {
            var curve = builder.Build(
                UnitGrades.FromLooks(
                    days.Select((day, j) => new GradeLook(day, (code >> (2 * j) & 1) == 1, (code >> (2 * j + 1) & 1) == 1))
                )
            );
            for (var i = 0; i < lives.Length; i++)
                sums[i] += curve.At(lives[i]);
        }

        Assert.All(sums, sum => Assert.Equal(1, sum, 1e-12));
    }

    // The story as it is believed to happen, told 200,000 times with a fixed seed: thresholds, copies, misreadings.
    [Fact]
    public void Drawn_as_they_come_about_grades_are_as_frequent_as_it_says()
    {
        const int Draws = 200_000;
        const double X = 5.25;
        var days = new[] { 60.0, 105, 150 };
        var dice = new Random(14);
        var counts = new int[64];
        for (var i = 0; i < Draws; i++)
            counts[Written(days, X, dice)]++;
        var builder = new GradeCurveBuilder(Link, Window);
        for (var code = 0; code < counts.Length; code++)
        {
            var looks = days.Select((day, j) => new GradeLook(day, (code >> j & 1) == 1, (code >> (3 + j) & 1) == 1)).ToArray();
            var mixed = builder.Build(UnitGrades.FromLooks(looks)).At(X);
            var chance = (mixed - 0.1 * GradesByDefinition.OfWindow(Link, Window, looks)) / 0.9;
            // Four standard errors of a share, and what five nodes over v leave.
            Assert.Equal(chance, counts[code] / (double)Draws, 4 * Math.Sqrt(chance / Draws) + 2e-4);
        }
    }

    [Fact]
    public void Without_grades_it_says_nothing()
    {
        var curve = new GradeCurveBuilder(Link, Window).Build(UnitGrades.None);

        foreach (var x in new[] { double.NegativeInfinity, 1, 5.1234, 9 })
            Assert.Equal(1, curve.At(x), 1e-15);
    }

    [Fact]
    public void Early_bad_grades_speak_for_short_lives_and_good_ones_for_long()
    {
        var builder = new GradeCurveBuilder(GradeLink.Usual, Window);
        var bad = builder.Build(UnitGrades.FromLooks([new(40, true, true), new(70, true, true)]));
        var good = builder.Build(UnitGrades.FromLooks([new(100, false, false), new(150, false, false)]));

        Assert.True(bad.At(Math.Log(90)) > 5 * bad.At(Math.Log(228)));
        Assert.True(good.At(Math.Log(300)) > 3 * good.At(Math.Log(180)));
    }

    private static int Written(double[] days, double x, Random dice)
    {
        var (stretch, code) = (Math.Exp(Link.Unevenness * Draws.Normal(dice)), 0);
        for (var grade = 0; grade < 2; grade++)
        {
            var (shift, spread) = grade == 0 ? (Link.SlightShift, Link.SlightLogSpread) : (Link.FairShift, Link.FairLogSpread);
            var passed = x + shift * stretch + Math.Exp(spread) * Draws.Normal(dice);
            var before = false;
            for (var j = 0; j < days.Length; j++)
            {
                var now = Draws.Entry(Math.Log(days[j]) >= passed, j == 0 ? null : before, Link, dice);
                code |= now ? 1 << (3 * grade + j) : 0;
                before = now;
            }
        }
        return code;
    }
}
