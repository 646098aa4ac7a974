using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Rows that cannot answer: with priors the prior's answer and a note, without a plain statement; never a wrong number.</summary>
public sealed class WithoutAnswerTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);
    private static readonly LifeDistribution[] Both = [LifeDistribution.Weibull, LifeDistribution.LogNormal];

    public static TheoryData<string> Cases =>
        ["no rows", "nothing ended", "all by then", "separated", "constant", "twice", "no spread", "one row"];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Without_priors_the_fit_says_that_there_is_no_estimate(string name)
    {
        foreach (var distribution in Both)
        {
            var (spells, columns) = Rows(name);
            var fit = LifetimeFitter.Fit(distribution, LifetimeFitRows.Create(spells, columns), LifePriors.Flat(columns.Length));

            Assert.False(fit.Converged);
            Assert.StartsWith("There is no estimate:", fit.Missing?.Text, StringComparison.Ordinal);
            Assert.Empty(fit.Coefficients);
            Assert.True(double.IsNaN(fit.LogLikelihood));
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void With_priors_there_is_an_answer_near_the_prior(string name)
    {
        foreach (var distribution in Both)
        {
            var window = WindowPrior.FromWindow(distribution, 28, 56);
            var (spells, columns) = Rows(name);
            var rows = LifetimeFitRows.Create(spells, columns, [.. spells.Select(_ => window.Place)], [.. spells.Select((_, i) => i % 3)]);
            var fit = LifetimeFitter.Fit(distribution, rows, window.ToLifePriors([.. columns.Select(_ => LifePriors.UsualCoefficient)]));

            Assert.Null(fit.Missing);
            Assert.True(fit.Converged);
            Assert.InRange(fit.LogScale, -1.6, 1.6);
            Assert.All(fit.Coefficients, c => Assert.InRange(c, -1.5, 1.5));
            Assert.InRange(fit.StdError(0), 1e-3, window.PracticeFactor + 1e-12);
        }
    }

    [Fact]
    public void The_covariate_the_rows_cannot_tell_is_named()
    {
        var (spells, columns) = Rows("constant");
        Assert.Contains(
            "heat",
            LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(spells, columns), LifePriors.Flat(1)).Missing!.Text,
            StringComparison.Ordinal
        );

        (spells, columns) = Rows("separated");
        Assert.Contains(
            "heat",
            LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(spells, columns), LifePriors.Flat(1)).Missing!.Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void That_nothing_ended_is_noted_and_moves_the_prior_only_upwards()
    {
        Spell[] spells = [.. Enumerable.Repeat(Spell.RightCensored(60), 20)];
        var rows = LifetimeFitRows.Create(spells, [], [.. spells.Select(_ => Window.Place)], [.. Enumerable.Range(0, 20)]);
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, Window.ToLifePriors([]));

        Assert.Equal(LifetimeFitNote.NothingEnded, Assert.Single(fit.Notes));
        Assert.True(fit.Coefficients[0] > 0);
    }

    [Fact]
    public void That_all_rows_are_one_clients_is_noted()
    {
        Spell[] spells = [Spell.Exact(30), Spell.Exact(35), Spell.RightCensored(40)];
        var fit = LifetimeFitter.Fit(
            LifeDistribution.Weibull,
            LifetimeFitRows.Create(spells, [], [.. spells.Select(_ => Window.Place)], [7, 7, 7]),
            Window.ToLifePriors([])
        );

        Assert.Equal(LifetimeFitNote.OneClient, Assert.Single(fit.Notes));
        Assert.True(fit.Converged);
    }

    [Fact]
    public void A_bond_made_today_tells_nothing_and_changes_nothing()
    {
        Spell[] spells = [Spell.Exact(30), Spell.RightCensored(0), Spell.Exact(50)];
        var rows = LifetimeFitRows.Create(spells, []);

        Assert.Equal((2, 2), (rows.Count, rows.Ended));
    }

    [Fact]
    public void A_covariate_far_from_nought_is_no_trouble()
    {
        double[] heat = [1, 2, 3, 4, 5, 6, 7, 8];
        Spell[] spells =
        [
            Spell.Exact(30),
            Spell.Exact(34),
            Spell.Exact(29),
            Spell.RightCensored(40),
            Spell.Exact(41),
            Spell.Exact(38),
            Spell.Exact(47),
            Spell.Exact(44),
        ];
        var near = LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create(spells, [new("heat", heat)]), LifePriors.Flat(1));
        var far = LifetimeFitter.Fit(
            LifeDistribution.Weibull,
            LifetimeFitRows.Create(spells, [new("heat", [.. heat.Select(h => h + 1e6)])]),
            LifePriors.Flat(1)
        );

        Assert.Equal(near.Coefficients[1], far.Coefficients[1], 1e-9);
        Assert.Equal(near.Coefficients[0] - 1e6 * near.Coefficients[1], far.Coefficients[0], 1e-3);
    }

    // Two kinds told apart by 10⁹ and 10⁹ + 1 are told apart.
    [Theory]
    [InlineData(1e9, 1)]
    [InlineData(1e13, 1)]
    [InlineData(-5e8, 0.5)]
    [InlineData(0, 1e60)]
    [InlineData(0, 1e-60)]
    public void Values_that_hardly_differ_beside_their_size_are_not_called_the_same(double from, double apart)
    {
        double[] kinds = [0, 1, 0, 1, 1, 0, 0, 1];
        Spell[] spells = [.. new[] { 30.0, 34, 29, 40, 41, 38, 27, 44 }.Select((t, i) => i == 3 ? Spell.RightCensored(t) : Spell.Exact(t))];
        foreach (var distribution in Both)
        {
            var window = WindowPrior.FromWindow(distribution, 28, 56);
            RowLocationScale[] places = [.. spells.Select(_ => window.Place)];
            LifetimeFit Fit(double[] x, RowLocationScale[] at, LifePriors priors) =>
                LifetimeFitter.Fit(distribution, LifetimeFitRows.Create(spells, [new("x", x)], at), priors);
            double[] far = [.. kinds.Select(k => from + apart * k)];
            var (near, plain) = (Fit(kinds, [], LifePriors.Flat(1)), Fit(far, [], LifePriors.Flat(1)));

            Assert.Null(plain.Missing);
            Assert.Equal(1, plain.Coefficients[1] * apart / near.Coefficients[1], 1e-8);
            Assert.Equal(near.LogLikelihood, plain.LogLikelihood, 1e-8);

            var free = window.ToLifePriors([NormalPrior.Flat]) with { Intercept = NormalPrior.Flat };
            var (placed, placedFar) = (Fit(kinds, places, free), Fit(far, places, free));
            Assert.Null(placedFar.Missing);
            Assert.Equal(1, placedFar.Coefficients[1] * apart / placed.Coefficients[1], 1e-8);
        }
    }

    [Theory]
    [InlineData(1e200)]
    [InlineData(1e-200)]
    public void Values_too_large_or_too_close_to_calculate_with_are_said_to_be(double apart)
    {
        var (spells, _) = Rows("nothing of these");
        spells = [Spell.Exact(30), Spell.Exact(40), .. spells];
        var rows = LifetimeFitRows.Create(spells, [new("x", [0, apart, 0])]);
        foreach (var priors in new[] { LifePriors.Flat(1), Window.ToLifePriors([LifePriors.UsualCoefficient]) })
        {
            Assert.Equal(
                "There is no estimate: the values of x are too far apart, or too close together, to calculate with. Give them in another unit.",
                LifetimeFitter.Fit(LifeDistribution.Weibull, rows, priors).Missing?.Text
            );
        }
    }

    private static (Spell[] Spells, CovariateColumn[] Columns) Rows(string name)
    {
        Spell[] ends =
        [
            Spell.Exact(30),
            Spell.Exact(34),
            Spell.Exact(41),
            Spell.RightCensored(44),
            Spell.RightCensored(50),
            Spell.RightCensored(39),
        ];
        return name switch
        {
            "no rows" => ([], []),
            "nothing ended" => ([.. ends.Select(s => Spell.RightCensored(s.Lower))], []),
            "all by then" => ([.. ends.Select(s => Spell.LeftCensored(s.Lower))], []),
            "separated" => (ends, [new("heat", [0, 0, 0, 0, 1, 1])]),
            "constant" => (ends, [new("heat", [3, 3, 3, 3, 3, 3])]),
            "twice" => (ends, [new("heat", [1, 2, 5, 3, 1, 2]), new("warmth", [2, 4, 10, 6, 2, 4])]),
            "no spread" => ([.. Enumerable.Repeat(Spell.Exact(30), 6)], []),
            _ => ([Spell.Exact(40)], []),
        };
    }
}
