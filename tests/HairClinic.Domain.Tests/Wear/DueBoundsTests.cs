using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>The rule's own edges, worked by hand on a calendar: bonded on Tuesday 3 March 2026, held four to eight weeks.</summary>
public sealed class DueBoundsTests
{
    private static readonly LocalDate Tuesday = new(2026, 3, 3);

    [Theory]
    [InlineData(56, 57, DueRuleName.TargetCappedAtCloses)]
    [InlineData(28, 27, DueRuleName.OpensEarlyAtTarget)]
    [InlineData(2, 1, DueRuleName.HeldUntilCured)]
    public void A_rule_that_changes_nothing_is_not_named(int onTheEdge, int beyond, DueRuleName rule)
    {
        Assert.False(DueRule.WindowFor(Ask(onTheEdge)).Why.Has(rule));
        Assert.True(DueRule.WindowFor(Ask(beyond)).Why.Has(rule));
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 9)]
    public void A_window_without_its_target_cannot_be_said(int opensLater, int targetLater) =>
        Assert.Throws<ArgumentException>(() =>
            new DueWindow(Tuesday.PlusDays(opensLater), Tuesday.PlusDays(targetLater), Tuesday.PlusDays(8), Tuesday, default)
        );

    [Fact]
    public void A_target_of_own_bonds_says_how_many_and_what_it_would_be_without_them()
    {
        var why = DueRule.WindowFor(Ask(35) with { Learnt = new(35, OwnBonds: 3, UnknownDays: 32) }).Why;

        Assert.True(why.Has(DueRuleName.TargetFromOwnBonds));
        Assert.Equal(new DueReason(DueRuleName.TargetFromOwnBonds, Tuesday.PlusDays(32), Tuesday.PlusDays(35), 35, 3), why.Explain()[1]);
    }

    [Fact]
    public void A_target_of_other_clients_bonds_is_the_practices()
    {
        var why = DueRule.WindowFor(Ask(35) with { Learnt = new(35, OwnBonds: 0, UnknownDays: 35) }).Why;

        Assert.True(why.Has(DueRuleName.TargetFromPractice));
        Assert.Equal(new DueReason(DueRuleName.TargetFromPractice, Tuesday, Tuesday.PlusDays(35), 35), why.Explain()[1]);
    }

    /// <summary>Away from before the window opens through the target, and in a second stretch a little longer.</summary>
    [Fact]
    public void Of_absences_that_follow_each_other_the_one_the_target_met_is_named()
    {
        ClientEvent[] away = [ClientEvent.Away(new(2026, 3, 30), new(2026, 4, 4)), ClientEvent.Away(new(2026, 3, 20), new(2026, 4, 8))];

        var due = DueRule.WindowFor(Ask(32) with { Events = [.. away] });

        Assert.Equal(new LocalDate(2026, 4, 9), due.DueOn);
        var reason = Assert.Single(due.Why.Explain(), r => r.Rule == DueRuleName.MovedOutOfAbsence);
        Assert.Equal(away[0].From, reason.From);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3661)]
    public void A_target_no_bond_can_have_is_refused(int days) =>
        Assert.StartsWith(
            "A target is 1 to 3,660 days after application.",
            Assert.Throws<ArgumentException>(() => DueRule.WindowFor(Ask(days))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void The_longest_target_is_taken() => Assert.Equal(Tuesday.PlusWeeks(8), DueRule.WindowFor(Ask(3660)).Target);

    [Fact]
    public void Without_a_hold_window_there_is_no_due_date() =>
        Assert.StartsWith(
            "A due date needs a hold window.",
            Assert.Throws<ArgumentException>(() => DueRule.WindowFor(Ask(32) with { Window = default })).Message,
            StringComparison.Ordinal
        );

    private static DueQuestion Ask(int targetDays) => new(Tuesday, FourToEightWeeks, targetDays, OpenTuesdayToSaturday());
}
