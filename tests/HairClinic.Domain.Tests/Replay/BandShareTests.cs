using HairClinic.Domain.Replay;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Replay;

public sealed class BandShareTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);

    // With every end known the share is a count.
    [Fact]
    public void With_every_end_known_it_is_counted()
    {
        BandOutcome[] all = [.. Enumerable.Range(0, 40).Select(i => At((i + 0.5) / 40, i))];

        var share = BandShare.Estimate(all);

        Assert.Equal((4, 32, 4, 0), (share.Before, share.Inside, share.After, share.NotKnown));
        Assert.Equal((0.1, 0.8), (share.ShareBefore, share.ShareInside), Within(1e-6));
    }

    // Kaplan-Meier's product over the same ends (the curve's own tests hold it against published tables).
    [Fact]
    public void What_has_not_ended_counts_as_Kaplan_and_Meier_count_it()
    {
        var dice = new Random(20261130);
        var rows = Enumerable.Range(0, 300).Select(_ => (Ends: dice.NextDouble(), Seen: 0.2 + dice.NextDouble())).ToList();
        BandOutcome[] all = [.. rows.Select((r, i) => r.Ends <= r.Seen ? At(r.Ends, i) : new BandOutcome(Math.Min(r.Seen, 1), 1, i))];
        var curve = SurvivalCurve.Estimate([
            .. rows.Select(r => r.Ends <= r.Seen ? Spell.Exact(1000 * r.Ends) : Spell.RightCensored(1000 * Math.Min(r.Seen, 1))),
        ]);

        var share = BandShare.Estimate(all);

        Assert.Equal(1 - curve.Survival(100), share.ShareBefore, 0.01);
        Assert.Equal(curve.Survival(100) - curve.Survival(900), share.ShareInside, 0.01);
    }

    // Drawn from the very prior that predicts (28-56 days, seed 1): half are taken down sound on day 32 or earlier, the rest stay on.
    [Fact]
    public void In_a_practice_that_is_as_predicted_four_in_five_end_inside_within_three_errors()
    {
        var share = Simulate(new Random(1), clients: 400, timesAsLong: 1);

        Assert.True(share.CanTellUpperEnd);
        Assert.InRange(share.ErrorOfInside, 0.005, 0.05);
        Assert.InRange(Math.Abs(share.ShareInside - 0.8), 0, 3 * share.ErrorOfInside);
        Assert.InRange(Math.Abs(share.ShareBefore - 0.1), 0, 3 * share.ErrorOfBefore);
        // As it is with the sound ones left out: far too few seem to end late.
        Assert.True(share.After < 0.7 * share.Before);
    }

    [Fact]
    public void Where_bonds_hold_a_quarter_shorter_than_predicted_too_many_end_before_the_band()
    {
        var share = Simulate(new Random(2), clients: 400, timesAsLong: 0.75);

        Assert.True(share.ShareBefore > 0.1 + 3 * share.ErrorOfBefore);
    }

    [Fact]
    public void Nine_ends_tell_nothing_and_without_late_ones_the_upper_end_is_left_open()
    {
        BandOutcome[] nine = [.. Enumerable.Range(0, 9).Select(i => At(0.1 * i + 0.05, i))];
        BandOutcome[] early =
        [
            .. Enumerable.Range(0, 20).Select(i => At(0.01 * i, i)),
            .. Enumerable.Range(0, 180).Select(i => new BandOutcome(0.2, 1, i)),
        ];

        BandOutcome[] known = [.. Enumerable.Range(0, 12).Select(i => At(0.2 + 0.02 * i, i)), new(0.3, 1, 12)];

        Assert.False(BandShare.Estimate(nine).CanTell);
        // All but one ended before the middle: that none ends late is seen.
        Assert.True(BandShare.Estimate(known).CanTellUpperEnd);
        var share = BandShare.Estimate(early);
        Assert.Equal((true, false), (share.CanTell, share.CanTellUpperEnd));
        Assert.Equal(0.05, share.ShareBefore, 0.011);
    }

    private static BandShare Simulate(Random dice, int clients, double timesAsLong)
    {
        var population = PopulationParameters.FromPriors(Window);
        var said = new LifePrediction(population, ClientEffectNodes.For(population), Window.Place);
        var spread = Window.Width * Math.Sqrt(Math.Pow(Window.PracticeFactor, 2) + Math.Pow(Window.ClientFactor, 2));
        var outcomes = new List<BandOutcome>();
        for (var client = 0; client < clients; client++)
        {
            var own = spread * Normal(dice);
            for (var n = 0; n < 3; n++)
            {
                var holds = timesAsLong * Math.Exp(Window.Centre + own + Window.Sigma * Math.Log(-Math.Log(1 - dice.NextDouble())));
                var off = dice.Next(2) == 0 ? dice.Next(20, 33) : 200;
                outcomes.Add(BandOutcome.FromSpell(said, holds <= off ? Spell.Exact(holds) : Spell.RightCensored(off), client));
            }
        }
        return BandShare.Estimate(outcomes);
    }

    private static BandOutcome At(double ended, int client) => new(ended, ended, client);

    private static double Normal(Random dice) =>
        Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());

    private static EqualityComparer<(double, double)> Within(double tolerance) =>
        EqualityComparer<(double, double)>.Create(
            (a, b) => Math.Abs(a.Item1 - b.Item1) <= tolerance && Math.Abs(a.Item2 - b.Item2) <= tolerance
        );
}
