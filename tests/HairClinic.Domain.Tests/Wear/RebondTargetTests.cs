using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear;

public sealed class LearnedRebondTargetTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56);
    private static readonly PopulationParameters Unseen = PopulationParameters.FromPriors(Window);
    private static readonly ClientEffectNodes Unknown = ClientEffectNodes.For(Unseen);

    [Fact]
    public void Where_nothing_is_known_the_window_alone_decides() =>
        Assert.Null(RebondTarget.FromModel(Unseen, Unknown, Window, effect: 0, fitted: false));

    [Fact]
    public void Habits_alone_move_the_target()
    {
        var target = RebondTarget.FromModel(Unseen, Unknown, Window, Math.Log(0.7), fitted: false)!.Value;

        Assert.Equal(22, target.Days);
        Assert.Equal(0, target.OwnBonds);
    }

    [Fact]
    public void The_practices_records_alone_say_something_of_a_client_never_seen() =>
        Assert.Equal(new RebondTarget(32, 0, 32), RebondTarget.FromModel(Unseen, Unknown, Window, effect: 0, fitted: true));

    [Fact]
    public void Their_own_bonds_move_it_against_what_it_would_be_without_them()
    {
        var own = ClientEffectNodes.For(
            Unseen,
            LifetimeFitRows.Create([Spell.Exact(20), Spell.Exact(21)], [], [Window.Place, Window.Place], new int[2])
        );

        var target = RebondTarget.FromModel(Unseen, own, Window, effect: 0, fitted: false)!.Value;

        Assert.Equal(2, target.OwnBonds);
        Assert.InRange(target.Days, 20, 30);
        Assert.Equal(32, target.UnknownDays);
    }
}
