using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.LinearAlgebra;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>
/// How far a row's centre and scale are known. Checked against the conditional normal distribution (any textbook of multivariate
/// statistics), by MathNet's matrices, and against grids in place of nodes.
/// </summary>
public sealed class DoubtTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);

    [Fact]
    public void The_doubt_of_a_row_is_that_of_its_whole_sum_given_the_scale()
    {
        double[,] all =
        {
            { 0.02, -0.015, 0.001, 0.004 },
            { -0.015, 0.03, 0.002, -0.003 },
            { 0.001, 0.002, 0.05, 0.001 },
            { 0.004, -0.003, 0.001, 0.01 },
        };
        var population = Known with { Coefficients = [0.1, -0.2], Covariance = [.. all.Cast<double>()] };
        var row = population.ForRow(0.7, [1, 0.4]);

        var sum = Vector<double>.Build.Dense([0.7, 1, 0.4]);
        var centre = Matrix<double>.Build.DenseOfArray(all).SubMatrix(0, 3, 0, 3);
        var withScale = sum * Vector<double>.Build.Dense([0.004, -0.003, 0.001]);
        var given = sum * centre * sum - withScale * withScale / 0.01;
        Assert.Equal(given, row.PracticeVariance * 0.49, 1e-15);
        Assert.Equal(0.01, row.LogScaleVariance);
        Assert.Equal(withScale / 0.01, row.LogScaleSlope * 0.7, 1e-15);
        Assert.Equal(given + 0.1225, population.ForRow(0.7, [1, 0.4], 0.1225).PracticeVariance * 0.49, 1e-15);
    }

    [Fact]
    public void Before_anything_was_fitted_a_row_is_as_its_window_says()
    {
        var population = PopulationParameters.FromPriors(Window);

        Assert.Same(population, population.ForRow(Window.Width, []));
        Assert.Equal(28, new LifePrediction(population, ClientEffectNodes.For(population), Window.Place).Band.From, 1e-3);
    }

    [Fact]
    public void A_row_without_loading_or_with_too_few_values_is_refused()
    {
        var population = Known with { Coefficients = [0.1], Covariance = new double[9] };

        Assert.Throws<ArgumentException>(() => population.ForRow(0.7, []));
        Assert.Throws<ArgumentException>(() => population.ForRow(0, [1]));
    }

    // δ and the one base's β cannot be told apart: each alone stays as doubtful as it was, their sum does not.
    [Fact]
    public void Two_thousand_bonds_of_one_base_leave_little_doubt_of_their_centre()
    {
        var (fit, row) = FitOfOneBase(2000);

        Assert.True(Math.Sqrt(fit.Covariance[0, 0]) * Window.Width > 0.8 * Window.PracticeSpread);
        Assert.InRange(Math.Sqrt(row.PracticeVariance) * Window.Width, 0.004, 0.02);
    }

    [Fact]
    public void A_base_of_three_lifts_is_as_doubtful_as_three_lifts_leave_it()
    {
        var (fit, _) = FitOfOneBase(400, otherBase: 3);
        var population = PopulationParameters.FromFit(fit);
        var (usual, other) = (population.ForRow(Window.Width, [1, 0]), population.ForRow(Window.Width, [0, 1]));

        Assert.True(Spread(other) > 3 * Spread(usual));
        Assert.InRange(Spread(other), 0.08, 0.3);

        double Spread(PopulationParameters row) => Math.Sqrt(row.PracticeVariance) * Window.Width;
    }

    // Gauss's rule of three against a fine grid over s and over what clients share.
    [Fact]
    public void A_doubtful_scale_makes_the_prediction_that_a_grid_over_it_makes()
    {
        var population = Known with { PracticeVariance = 0.01, LogScaleVariance = 0.06, LogScaleSlope = 0.15 };
        var prediction = new LifePrediction(population, ClientEffectNodes.For(population), Window.Place);

        foreach (var days in new[] { 15.0, 25, 32, 45, 60 })
            Assert.Equal(ByGrid(population, days), prediction.Survival(days), 4e-4);
    }

    private static PopulationParameters Known => new(LifeDistribution.Weibull, -0.1, [], 0.05, 0, 0.1, 500);

    private static double ByGrid(PopulationParameters population, double days)
    {
        var (sum, total) = (0.0, 0.0);
        var spread = Math.Sqrt(population.ClientSpread * population.ClientSpread + population.PracticeVariance);
        for (var s = -6.0; s <= 6; s += 0.05)
        {
            var change = s * Math.Sqrt(population.LogScaleVariance);
            var tau = Window.Sigma * Math.Exp(population.LogScale + change);
            for (var e = -6.0; e <= 6; e += 0.05)
            {
                var centre = Window.Centre + Window.Width * (population.PracticeMean + spread * e + population.LogScaleSlope * change);
                var share = Math.Exp(-(s * s + e * e) / 2);
                total += share;
                sum += share * Math.Exp(-Math.Exp((Math.Log(days) - centre) / tau));
            }
        }
        return sum / total;
    }

    private static (LifetimeFit Fit, PopulationParameters Row) FitOfOneBase(int bonds, int otherBase = 0)
    {
        var dice = new Random(7);
        var spells = new List<Spell>();
        for (var i = 0; i < bonds + otherBase; i++)
        {
            var hold = Math.Exp(Window.Centre + Window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble())));
            spells.Add(hold < 38 || i >= bonds ? Spell.Exact(hold) : Spell.RightCensored(38));
        }
        List<CovariateColumn> columns = [new("usual base", [.. spells.Select((_, i) => i < bonds ? 1.0 : 0)])];
        if (otherBase > 0)
            columns.Add(new("other base", [.. spells.Select((_, i) => i < bonds ? 0.0 : 1)]));
        var fit = LifetimeFitter.Fit(
            LifeDistribution.Weibull,
            LifetimeFitRows.Create([.. spells], columns, [.. spells.Select(_ => Window.Place)]),
            Window.ToLifePriors([.. columns.Select(_ => LifePriors.UsualCoefficient)])
        );
        return (fit, PopulationParameters.FromFit(fit).ForRow(Window.Width, [1, .. new double[columns.Count - 1]]));
    }
}
