using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

public sealed class LifePredictionTests
{
    private static readonly Table Quantiles = Table.Read("aft_quantiles.csv");
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);

    // Designed quantiles, solved numerically outside the program.
    [Theory]
    [InlineData(28, 56, 32.434, 41.253)]
    [InlineData(182, 273, 198.34, 228.31)]
    public void Of_an_unknown_client_the_window_is_told_back(double low, double high, double fifth, double median)
    {
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, low, high);
        var prediction = Unseen(window);

        Assert.Equal(low, prediction.Band.From, low * 1e-5);
        Assert.Equal(high, prediction.Band.To, high * 1e-5);
        Assert.Equal(fifth, prediction.Quantile(0.2), 5e-3 * low / 28);
        Assert.Equal(median, prediction.Median, 5e-3 * low / 28);
        Assert.Equal((0, 0), (prediction.Own, prediction.Others));
    }

    [Fact]
    public void It_is_the_day_one_prior_to_the_last_digits()
    {
        var prior = new HoldPrior(28, 56);
        var prediction = Unseen(Window);

        Assert.Equal(32, prediction.LastDayAtOrAbove(HoldPrior.TargetSurvival));
        foreach (var days in new[] { 5.0, 28, 41, 60, 90 })
            Assert.Equal(prior.Survival(days), prediction.Survival(days), 1e-12);
    }

    [Theory]
    [InlineData(28, 56)]
    [InlineData(14, 98)]
    public void A_log_normal_window_is_told_back_too(double low, double high)
    {
        var prediction = Unseen(WindowPrior.FromWindow(LifeDistribution.LogNormal, low, high));

        Assert.Equal(low, prediction.Band.From, low * 2e-5);
        Assert.Equal(high, prediction.Band.To, high * 2e-5);
        Assert.Equal(Math.Sqrt(low * high), prediction.Median, low * 1e-9);
    }

    [Fact]
    public void A_fit_to_nothing_predicts_what_the_prior_does_for_every_window_alike()
    {
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, LifetimeFitRows.Create([], [], [], []), Window.ToLifePriors([]));
        var population = PopulationParameters.FromFit(fit);
        var other = WindowPrior.FromWindow(LifeDistribution.Weibull, 21, 35);
        var prediction = new LifePrediction(
            population with
            {
                ClientSpread = Window.ClientFactor,
            },
            ClientEffectNodes.For(PopulationParameters.FromPriors(Window)),
            other.Place
        );

        Assert.Equal(LifetimeFitNote.NoRows, Assert.Single(fit.Notes));
        Assert.Equal(PopulationParameters.FromPriors(Window).PracticeVariance, population.PracticeVariance, 1e-12);
        Assert.Equal(0, population.LogScale);
        Assert.Equal(21, prediction.Band.From, 1e-3);
        Assert.Equal(35, prediction.Band.To, 1e-3);
    }

    [Fact]
    public void Having_lasted_so_long_the_rest_is_what_remains_of_the_curve()
    {
        var prediction = Unseen(Window);

        Assert.Equal(prediction.Survival(45) / prediction.Survival(40), prediction.SurvivalGiven(40, 5), 1e-12);
        Assert.Equal(0.7, prediction.SurvivalGiven(40, prediction.RemainingQuantile(40, 0.3)), 1e-9);
        Assert.True(prediction.RemainingQuantile(200, 0.5) > 0);
        Assert.Equal(1, prediction.SurvivalGiven(40, 0));
    }

    // The posterior by brute force: a fine grid over b and over δ instead of nodes.
    [Fact]
    public void A_clients_own_bonds_move_the_prediction_as_a_fine_grid_says()
    {
        Spell[] own = [Spell.Exact(33), Spell.RightCensored(30), Spell.FromBounds(25, 34), Spell.RightCensored(28)];
        var population = PopulationParameters.FromPriors(Window) with
        {
            LogScale = -0.1,
            PracticeMean = 0.05,
            PracticeVariance = 0.004,
            Count = 900,
        };
        var rows = LifetimeFitRows.Create(own, [], [.. own.Select(_ => Window.Place)], new int[own.Length]);
        var prediction = new LifePrediction(population, ClientEffectNodes.For(population, rows), Window.Place);

        Assert.Equal((4, 896), (prediction.Own, prediction.Others));
        foreach (var days in new[] { 10.0, 28, 35, 45 })
            Assert.Equal(ByGrid(population, own, days), prediction.Survival(days), 1e-7);
    }

    [Fact]
    public void A_bond_that_held_long_makes_longer_holds_likelier_and_the_band_narrower()
    {
        var population = PopulationParameters.FromPriors(Window);
        var rows = LifetimeFitRows.Create(
            [.. Enumerable.Repeat(Spell.Exact(60), 5)],
            [],
            [.. Enumerable.Repeat(Window.Place, 5)],
            new int[5]
        );
        var prediction = new LifePrediction(population, ClientEffectNodes.For(population, rows), Window.Place);

        Assert.True(prediction.Median > 45);
        Assert.True(prediction.Band.To / prediction.Band.From < 2);
    }

    [Fact]
    public void Published_quantiles_of_a_plain_fit_come_out()
    {
        foreach (var row in Quantiles.Rows)
        {
            var (rows, distribution) = PublishedFitsTests.Data(row[0]);
            var fit = LifetimeFitter.Fit(distribution, rows, LifePriors.Flat(rows.Names.Length));
            var given = row[1].Split(';').Select(part => Table.Number(part.Split('=')[1])).ToArray();
            var linear = given.Select((x, j) => x * fit.Coefficients[j + 1]).Sum();
            // A point: neither people nor practice vary.
            var population = PopulationParameters.FromFit(fit) with
            {
                PracticeVariance = 0,
            };
            var prediction = new LifePrediction(population, ClientEffectNodes.For(population), RowLocationScale.Plain, linear);

            Assert.Equal(1, prediction.Quantile(Quantiles.Number(row, "p")) / Quantiles.Number(row, "quantile"), 1e-7);
        }
        Assert.Equal(20, Quantiles.Rows.Count);
    }

    private static LifePrediction Unseen(WindowPrior window)
    {
        var population = PopulationParameters.FromPriors(window);
        return new LifePrediction(population, ClientEffectNodes.For(population), window.Place);
    }

    private static double ByGrid(PopulationParameters population, Spell[] own, double days)
    {
        var tau = Window.Sigma * Math.Exp(population.LogScale);
        double Z(double t, double place) => Math.Exp((Math.Log(t) - Window.Centre - Window.Width * place) / tau);
        var (sum, total) = (0.0, 0.0);
        for (var b = -1.5; b <= 1.5; b += 0.002)
        {
            var weight = Math.Exp(-b * b / 2 / population.ClientSpread / population.ClientSpread);
            foreach (var spell in own)
            {
                var (lower, upper) = (Z(spell.Lower, b + population.PracticeMean), Z(spell.Upper, b + population.PracticeMean));
                weight *= spell.End switch
                {
                    SpellEnd.At => lower * Math.Exp(-lower),
                    SpellEnd.After => Math.Exp(-lower),
                    _ => Math.Exp(-lower) - Math.Exp(-upper),
                };
            }
            for (var e = -6.0; e <= 6; e += 0.05)
            {
                var share = weight * Math.Exp(-e * e / 2);
                total += share;
                sum += share * Math.Exp(-Z(days, b + population.PracticeMean + Math.Sqrt(population.PracticeVariance) * e));
            }
        }
        return sum / total;
    }
}
