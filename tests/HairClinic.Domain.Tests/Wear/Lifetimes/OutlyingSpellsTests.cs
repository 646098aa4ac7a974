using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

public sealed class OutlyingSpellsTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);

    // Five hundred bonds of fifty clients, drawn from the window itself, taken down at a rebond in the fifth to seventh week.
    private static readonly Spell[] Honest = Draw(clients: 50, bonds: 10, seed: 1);

    [Fact]
    public void Five_hundred_honest_bonds_are_fitted_as_they_are()
    {
        var found = Find(Honest);

        Assert.Empty(found.Asked);
        Assert.Equal(Fit([.. Honest.Select(s => (Spell?)s)]).Fit.LogPosterior, found.Fit.LogPosterior);
        Assert.InRange(found.Fit.Scale, 0.9, 1.1);
        Assert.Equal(32, Target(found.Fit));
    }

    // What one such bond did to the fit before was found by a program of its own: scale 0.97 to 4.42, every target 32 to 26 days;
    // with 36,500 days to 14.
    [Theory]
    [InlineData(3_650)]
    [InlineData(36_500)]
    public void One_outlying_bond_moves_no_clients_target(int days)
    {
        Spell[] spells = [.. Honest, Spell.Exact(days)];
        var plain = Fit([.. spells.Select(s => (Spell?)s)]).Fit;
        Assert.True(plain.Scale > 4);
        Assert.True(Target(plain) <= 26);

        var found = Find(spells);

        Assert.Equal([500], found.Asked);
        Assert.InRange(found.Fit.Scale, 0.9, 1.1);
        Assert.Equal(32, Target(found.Fit));
    }

    [Fact]
    public void Several_do_not_hide_one_another_at_either_end_nor_behind_an_open_one()
    {
        Spell[] wrong =
        [
            Spell.Exact(3_650),
            Spell.RightCensored(400),
            Spell.FromBounds(300, 400),
            .. Enumerable.Repeat(Spell.Exact(200), 8),
            Spell.Exact(2),
            Spell.LeftCensored(1),
        ];

        var found = Find([.. Honest, .. wrong]);

        Assert.Equal(Enumerable.Range(500, wrong.Length), found.Asked);
        Assert.Equal(32, Target(found.Fit));
    }

    [Fact]
    public void Of_three_bonds_the_one_of_ten_years_is_asked_about()
    {
        var found = Find([Spell.Exact(35), Spell.RightCensored(38), Spell.Exact(3_650)], bonds: 3);

        Assert.Equal([2], found.Asked);
        Assert.InRange(Target(found.Fit), 31, 35);
    }

    [Fact]
    public void What_somebody_said_is_right_counts_and_what_is_wrong_for_good_does_not()
    {
        SpellToJudge[] rows =
        [
            .. Judged(Honest),
            Row(Spell.Exact(110), SpellStanding.Trusted),
            Row(Spell.Exact(3_650), SpellStanding.LeftOut),
        ];

        var found = OutlyingSpells.Find(rows, Prior, spells => Fit(spells));

        Assert.Empty(found.Asked);
        Assert.Equal(501, found.Fit.Count);
    }

    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(-0.5, -0.5)]
    [InlineData(0, 0.7)]
    public void A_practice_that_is_not_as_its_windows_say_is_not_asked_about_all_its_bonds(double longer, double logScale) =>
        Assert.InRange(Find(Draw(50, 10, seed: 2, longer, logScale)).Asked.Count, 0, 1);

    [Fact]
    public void Of_honest_bonds_hardly_one_in_a_thousand_is_asked_about()
    {
        var asked = Enumerable.Range(10, 4).Sum(seed => Find(Draw(clients: 300, bonds: 10, seed), bonds: 10).Asked.Count);

        // 12,000 of them: twelve, and three errors of a count.
        Assert.InRange(asked, 0, 22);
    }

    [Fact]
    public void Without_an_estimate_nothing_is_strange()
    {
        var rows = Judged([Spell.Exact(35), Spell.Exact(3_650)]);

        Assert.Empty(OutlyingSpells.Find<LifetimeFit>(rows, Prior, spells => (Fit(spells).Fit, null)).Asked);
    }

    [Fact]
    public void What_is_usual_is_the_band_of_four_in_five()
    {
        var (from, to) = Prior.Usual(0, Window.Place);

        Assert.Equal((28, 56), (Math.Round(from), Math.Round(to)));
    }

    private static SpellBelief Prior => new(PopulationParameters.FromPriors(Window), _ => 0);

    private static OutlyingSpellsFound<LifetimeFit> Find(Spell[] spells, int bonds = 10) =>
        OutlyingSpells.Find(Judged(spells), Prior, kept => Fit(kept, bonds));

    private static SpellToJudge[] Judged(IEnumerable<Spell> spells) => [.. spells.Select(s => Row(s, SpellStanding.NotAsked))];

    private static SpellToJudge Row(Spell spell, SpellStanding standing) => new(spell, Window.Place, standing);

    private static (LifetimeFit Fit, SpellBelief? Believed) Fit(IReadOnlyList<Spell?> spells, int bonds = 10)
    {
        var kept = Enumerable.Range(0, spells.Count).Where(i => spells[i] is not null).ToArray();
        var rows = LifetimeFitRows.Create(
            [.. kept.Select(i => spells[i]!.Value)],
            [],
            [.. kept.Select(_ => Window.Place)],
            [.. kept.Select(i => i / bonds)]
        );
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, Window.ToLifePriors([]));
        return (fit, fit.Missing is null ? new SpellBelief(PopulationParameters.FromFit(fit), _ => 0) : null);
    }

    private static int Target(LifetimeFit fit)
    {
        var population = PopulationParameters.FromFit(fit);
        return new LifePrediction(population, ClientEffectNodes.For(population), Window.Place).LastDayAtOrAbove(0.8);
    }

    private static Spell[] Draw(int clients, int bonds, int seed, double longer = 0, double logScale = 0)
    {
        var random = new Random(seed);
        var spells = new List<Spell>();
        for (var client = 0; client < clients; client++)
        {
            var effect = longer + Normal.Sample(random, 0, Window.ClientSpread);
            for (var bond = 0; bond < bonds; bond++)
            {
                var noise = Math.Exp(logScale) * Window.Sigma * Math.Log(-Math.Log(1 - random.NextDouble()));
                var held = Math.Max(1, Math.Ceiling(Math.Exp(Window.Centre + effect + noise)));
                var takenDown = 30 + random.Next(14);
                spells.Add(held <= takenDown ? Spell.Exact(held) : Spell.RightCensored(takenDown));
            }
        }
        return [.. spells];
    }
}
