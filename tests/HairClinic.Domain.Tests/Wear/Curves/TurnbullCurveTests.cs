using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Tests.Wear.Curves;

public sealed class TurnbullCurveTests
{
    // On exact and right-censored data the estimate is Kaplan and Meier's (Turnbull 1976; from memory).
    [Fact]
    public void Without_intervals_it_is_the_other_curve()
    {
        var curve = TurnbullCurve.Estimate(Spells.OfLeukaemia);
        var steps = SurvivalCurve.Estimate(Spells.OfLeukaemia).Steps;

        Assert.True(curve.Converged);
        foreach (var step in steps)
            Assert.Equal(step.Survival, curve.Steps.Last(s => s.To <= step.Time).Survival, 1e-7);
    }

    // With one interval inside all others everything can lie there; with two apart, what only one covers goes to it.
    [Fact]
    public void Weight_goes_to_the_innermost_intervals()
    {
        var curve = TurnbullCurve.Estimate([Spell.FromBounds(1, 3), Spell.FromBounds(2, 6), Spell.LeftCensored(4)]);

        var step = Assert.Single(curve.Steps);
        Assert.Equal((2, 3, 1, 0), (step.From, step.To, step.Mass, step.Survival));
    }

    // Self-consistency, the definition: each mass is the mean of its posterior shares.
    [Fact]
    public void The_masses_reproduce_themselves()
    {
        var spells = Spells.OfLeukaemiaByWeek;
        var curve = TurnbullCurve.Estimate(spells);

        Assert.True(curve.Converged);
        Assert.InRange(curve.LargestChange, 0, 1e-10);
        var next = new double[curve.Steps.Count];
        foreach (var spell in spells)
        {
            var covered = curve.Steps.Select(s => Covers(spell, s) ? s.Mass : 0).ToArray();
            for (var j = 0; j < next.Length; j++)
                next[j] += covered[j] / covered.Sum() / spells.Length;
        }
        for (var j = 0; j < next.Length; j++)
            Assert.Equal(curve.Steps[j].Mass, next[j], 1e-8);
    }

    // At the likelihood's maximum no cell that holds nothing would raise it by holding something, and moving weight between two
    // that do changes nothing (Gentleman and Geyer 1994, Biometrika 81:618–623; from memory).
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_crowd_of_overlapping_intervals_settles_at_the_maximum(int seed)
    {
        var random = new Random(seed);
        Spell[] spells =
        [
            .. Enumerable
                .Range(0, 600)
                .Select(_ => (From: random.Next(1, 150), Width: random.Next(10, 50)))
                .Select(s => random.Next(4) == 0 ? Spell.RightCensored(s.From) : Spell.FromBounds(s.From, s.From + s.Width)),
        ];

        var curve = TurnbullCurve.Estimate(spells);

        Assert.True(curve.Converged);
        var slopes = new double[curve.Steps.Count];
        foreach (var spell in spells)
        {
            var inside = curve.Steps.Select(s => Covers(spell, s)).ToArray();
            var covered = curve.Steps.Zip(inside).Sum(s => s.Second ? s.First.Mass : 0);
            for (var j = 0; j < slopes.Length; j++)
                slopes[j] += inside[j] ? 1 / covered / spells.Length : 0;
        }
        for (var j = 0; j < slopes.Length; j++)
            Assert.InRange(slopes[j], curve.Steps[j].Mass > 1e-4 ? 0.999 : 0, 1.001);
    }

    // Time to cosmetic deterioration with radiotherapy alone, months (Finkelstein and Wolfe 1985, Biometrics 41:933–945; looked
    // up). The estimate as printed where these data are the standard example; from memory.
    [Fact]
    public void The_standard_example_gives_the_printed_masses()
    {
        const string Data =
            "45- 6-10 0-7 46- 46- 7-16 17- 7-14 37-44 0-8 4-11 15- 11-15 22- 46- 46- 25-37 46- 26-40 46- 27-34 36-44 46- 36-48 37- 40- "
            + "17-25 46- 11-18 38- 5-12 37- 0-5 18- 24- 36- 5-11 19-35 17-25 24- 32- 33- 19-26 37- 34- 36-";
        var curve = TurnbullCurve.Estimate([
            .. Data.Split(' ')
                .Select(word => word.Split('-'))
                .Select(ends =>
                    Spell.FromBounds(Table.Number(ends[0]), ends[1].Length > 0 ? Table.Number(ends[1]) : double.PositiveInfinity)
                ),
        ]);
        (double From, double To, double Mass)[] printed =
        [
            (4, 5, 0.0463),
            (6, 7, 0.0334),
            (7, 8, 0.0887),
            (11, 12, 0.0708),
            (24, 25, 0.0926),
            (33, 34, 0.0818),
            (38, 40, 0.1209),
            (46, 48, 0.4656),
        ];

        Assert.True(curve.Converged);
        var held = curve.Steps.Where(step => step.Mass > 1e-4).ToList();
        Assert.Equal(printed.Select(p => (p.From, p.To)), held.Select(step => (step.From, step.To)));
        Assert.All(printed.Zip(held), pair => Assert.Equal(pair.First.Mass, pair.Second.Mass, 5.1e-5));
    }

    [Fact]
    public void An_end_on_a_day_lies_inside_the_interval_that_closes_on_it_and_not_in_the_one_that_opens_there()
    {
        Assert.Equal(1, TurnbullCurve.Estimate([Spell.Exact(5), Spell.FromBounds(3, 5)]).Steps.Single().Mass);
        Assert.Equal(2, TurnbullCurve.Estimate([Spell.Exact(5), Spell.FromBounds(5, 8)]).Steps.Count);
    }

    [Fact]
    public void Nothing_seen_is_no_curve() => Assert.Empty(TurnbullCurve.Estimate([]).Steps);

    private static bool Covers(Spell spell, TurnbullStep step) =>
        spell.End == SpellEnd.At ? step.From == spell.Lower && step.To == spell.Upper : step.From >= spell.Lower && step.To <= spell.Upper;
}
