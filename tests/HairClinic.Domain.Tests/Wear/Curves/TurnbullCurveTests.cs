using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Tests.Wear.Curves;

public sealed class TurnbullCurveTests
{
    // On exact and right-censored data the estimate is Kaplan and Meier's (Turnbull 1976; from memory).
    [Fact]
    public void Without_intervals_it_is_the_other_curve()
    {
        var curve = TurnbullCurve.Of(Spells.OfLeukaemia);
        var steps = SurvivalCurve.Of(Spells.OfLeukaemia).Steps;

        Assert.True(curve.Converged);
        foreach (var step in steps)
            Assert.Equal(step.Survival, curve.Steps.Last(s => s.To <= step.Time).Survival, 1e-7);
    }

    // With one interval inside all others everything can lie there; with two apart, what only one covers goes to it.
    [Fact]
    public void Weight_goes_to_the_innermost_intervals()
    {
        var curve = TurnbullCurve.Of([Spell.Between(1, 3), Spell.Between(2, 6), Spell.By(4)]);

        var step = Assert.Single(curve.Steps);
        Assert.Equal((2, 3, 1, 0), (step.From, step.To, step.Mass, step.Survival));
    }

    // Self-consistency, the definition: each mass is the mean of its posterior shares.
    [Fact]
    public void The_masses_reproduce_themselves()
    {
        var spells = Spells.OfLeukaemiaByWeek;
        var curve = TurnbullCurve.Of(spells);

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

    [Fact]
    public void An_end_on_a_day_lies_inside_the_interval_that_closes_on_it_and_not_in_the_one_that_opens_there()
    {
        Assert.Equal(1, TurnbullCurve.Of([Spell.At(5), Spell.Between(3, 5)]).Steps.Single().Mass);
        Assert.Equal(2, TurnbullCurve.Of([Spell.At(5), Spell.Between(5, 8)]).Steps.Count);
    }

    [Fact]
    public void Nothing_seen_is_no_curve() => Assert.Empty(TurnbullCurve.Of([]).Steps);

    private static bool Covers(Spell spell, TurnbullStep step) =>
        spell.End == SpellEnd.At ? step.From == spell.Lower && step.To == spell.Upper : step.From >= spell.Lower && step.To <= spell.Upper;
}
