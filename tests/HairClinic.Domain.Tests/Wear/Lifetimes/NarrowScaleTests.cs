using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Where spells of one client hardly differ, a client's effect is known sharply and far from normally.</summary>
public sealed class NarrowScaleTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);

    // Sought out: near the top the nodes leave value and slope apart by more than rounding does.
    [Theory]
    [InlineData(39)]
    [InlineData(74)]
    [InlineData(126)]
    public void The_climb_settles(int seed)
    {
        var fit = Fit(seed);

        Assert.True(fit.Converged, $"seed {seed}: {fit.Missing?.Text}");
        Assert.InRange(fit.LogScale, -2, -0.5);
    }

    [Fact]
    public void Places_that_cannot_be_do_not_spoil_the_prediction()
    {
        var population = PopulationParameters.FromPriors(Window) with { LogScale = -1.2 };
        var nodes = ClientEffectNodes.For(population, LifetimeFitRows.Create([Spell.Exact(230)], [], [Window.Place], new int[1]));
        var prediction = new LifePrediction(population, nodes, Window.Place);

        Assert.InRange(prediction.Median, 220, 240);
        Assert.InRange(prediction.Survival(180), 0.9, 1);
    }

    private static LifetimeFit Fit(int seed)
    {
        var dice = new Random(seed);
        var (spells, clients) = (new List<Spell>(), new List<int>());
        for (var client = 0; client < 70; client++)
        {
            var place = Window.ClientFactor * Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
            for (var unit = dice.Next(1, 6); unit > 0; unit--)
            {
                var life = Math.Exp(
                    Window.Centre + Window.Width * place + 0.32 * Window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble()))
                );
                var seen = dice.Next(20, 300);
                spells.Add(
                    life > seen ? Spell.RightCensored(seen) : Spell.FromBounds(35 * Math.Floor(life / 35), 35 * Math.Floor(life / 35) + 35)
                );
                clients.Add(client);
            }
        }
        var rows = LifetimeFitRows.Create([.. spells], [], [.. spells.Select(_ => Window.Place)], [.. clients]);
        return LifetimeFitter.Fit(LifeDistribution.Weibull, rows, Window.ToLifePriors([]));
    }
}
