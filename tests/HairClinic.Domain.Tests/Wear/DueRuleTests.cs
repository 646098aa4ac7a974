using HairClinic.Domain.Wear;
using NodaTime;
using static HairClinic.Domain.Tests.Wear.Salons;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>Examples worked by hand on a calendar. 2 March 2026 is a Monday.</summary>
public sealed class DueRuleTests
{
    private static readonly LocalDate Tuesday = new(2026, 3, 3);

    private static DueRuleInput Ask(OpeningDays? opening = null, int targetDays = 32) =>
        new(Tuesday, FourToEightWeeks, targetDays, opening ?? OpenTuesdayToSaturday());

    [Fact]
    public void A_four_to_eight_week_bond_aims_at_day_32()
    {
        var due = DueRule.DueWindowFor(Ask());

        Assert.Equal(new LocalDate(2026, 3, 31), due.Opens);
        Assert.Equal(new LocalDate(2026, 4, 28), due.Closes);
        Assert.Equal(new LocalDate(2026, 4, 4), due.Target);
        Assert.Equal(new LocalDate(2026, 4, 4), due.DueOn);
        Assert.Equal(
            [
                new DueReason(DueRuleName.HoldWindow, Tuesday, due.Closes, 4, 8),
                new DueReason(DueRuleName.TargetFromPrior, Tuesday, due.Target, 32),
            ],
            due.Why.Explain()
        );
    }

    [Fact]
    public void A_target_beyond_the_window_is_capped_at_its_last_day()
    {
        var due = DueRule.DueWindowFor(Ask(targetDays: 70));

        Assert.Equal(due.Closes, due.Target);
        Assert.Equal(new LocalDate(2026, 4, 28), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.TargetCappedAtCloses, new(2026, 5, 12), due.Closes), due.Why.Explain());
    }

    [Fact]
    public void A_client_who_holds_badly_opens_the_window_early_at_the_target()
    {
        var due = DueRule.DueWindowFor(Ask(targetDays: 18));

        Assert.Equal(new LocalDate(2026, 3, 21), due.Opens);
        Assert.Equal(new LocalDate(2026, 3, 21), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.OpensEarlyAtTarget, new(2026, 3, 31), due.Target), due.Why.Explain());
    }

    [Fact]
    public void A_target_inside_the_cure_waits_for_the_first_clear_day()
    {
        var due = DueRule.DueWindowFor(Ask(targetDays: 1) with { Cure = new(48) });

        Assert.Equal(new LocalDate(2026, 3, 6), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.HeldUntilCured, new(2026, 3, 4), due.Target, 48), due.Why.Explain());
    }

    [Fact]
    public void A_preferred_weekday_within_three_days_wins_over_the_nearest_open_day()
    {
        var due = DueRule.DueWindowFor(Ask() with { PreferredWeekdays = WeekdaySet.Of(IsoDayOfWeek.Wednesday) });

        Assert.Equal(new LocalDate(2026, 4, 1), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.MovedToPreferredWeekday, due.Target, due.DueOn), due.Why.Explain());
    }

    [Fact]
    public void Of_two_equally_near_preferred_days_the_earlier_is_taken()
    {
        var question = Ask() with
        {
            // Saturday 4 April is the target: Thursday 2 and Monday 6 lie two days off on either side.
            Opening = OpenDaily("Europe/London"),
            PreferredWeekdays = WeekdaySet.Of(IsoDayOfWeek.Monday, IsoDayOfWeek.Thursday),
        };

        Assert.Equal(new LocalDate(2026, 4, 2), DueRule.DueWindowFor(question).DueOn);
    }

    [Fact]
    public void A_preferred_weekday_outside_the_window_is_not_taken()
    {
        // Target Tuesday 31 March opens the window; the Monday before lies outside it, the one after is six days off.
        var question = Ask(OpenDaily("Europe/London"), 28) with
        {
            PreferredWeekdays = WeekdaySet.Of(IsoDayOfWeek.Monday),
        };

        var due = DueRule.DueWindowFor(question);

        Assert.Equal(due.Target, due.DueOn);
        Assert.False(due.Why.Has(DueRuleName.MovedToPreferredWeekday));
    }

    [Fact]
    public void A_target_on_a_closed_day_moves_to_the_nearest_open_one()
    {
        // 34 days: Monday 6 April, closed; Tuesday is nearer than Saturday.
        var due = DueRule.DueWindowFor(Ask(targetDays: 34));

        Assert.Equal(new LocalDate(2026, 4, 7), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.MovedToOpenDay, due.Target, due.DueOn), due.Why.Explain());
    }

    [Fact]
    public void A_salon_closed_for_the_whole_window_takes_the_client_on_its_last_day_before()
    {
        var opening = OpenTuesdayToSaturday(Closed(new(2026, 3, 29), new(2026, 4, 30)));

        var due = DueRule.DueWindowFor(Ask(opening));

        Assert.Equal(new LocalDate(2026, 3, 28), due.DueOn);
        Assert.Contains(new DueReason(DueRuleName.MovedBeforeWindow, due.Target, due.DueOn), due.Why.Explain());
    }

    [Fact]
    public void A_salon_that_never_opens_leaves_the_bare_target_and_says_so()
    {
        var due = DueRule.DueWindowFor(Ask(OpenTuesdayToSaturday(Closed(new(2026, 1, 1), new(2026, 12, 31)))));

        Assert.Equal(due.Target, due.DueOn);
        Assert.Equal(new DueReason(DueRuleName.NoOpenDay, due.Target, due.Target), due.Why.Explain()[^1]);
    }

    [Theory]
    [InlineData(56, 57, DueRuleName.TargetCappedAtCloses)]
    [InlineData(28, 27, DueRuleName.OpensEarlyAtTarget)]
    [InlineData(2, 1, DueRuleName.HeldUntilCured)]
    public void A_rule_that_changes_nothing_is_not_named(int onTheEdge, int beyond, DueRuleName rule)
    {
        Assert.False(DueRule.DueWindowFor(Ask(targetDays: onTheEdge)).Why.Has(rule));
        Assert.True(DueRule.DueWindowFor(Ask(targetDays: beyond)).Why.Has(rule));
    }

    [Fact]
    public void A_target_of_own_bonds_says_how_many_and_what_it_would_be_without_them()
    {
        var why = DueRule.DueWindowFor(Ask(targetDays: 35) with { Learnt = new(35, OwnBonds: 3, UnknownDays: 32) }).Why;

        Assert.True(why.Has(DueRuleName.TargetFromOwnBonds));
        Assert.Equal(new DueReason(DueRuleName.TargetFromOwnBonds, Tuesday.PlusDays(32), Tuesday.PlusDays(35), 35, 3), why.Explain()[1]);
    }

    [Fact]
    public void A_target_of_other_clients_bonds_is_the_practices()
    {
        var why = DueRule.DueWindowFor(Ask(targetDays: 35) with { Learnt = new(35, OwnBonds: 0, UnknownDays: 35) }).Why;

        Assert.True(why.Has(DueRuleName.TargetFromPractice));
        Assert.Equal(new DueReason(DueRuleName.TargetFromPractice, Tuesday, Tuesday.PlusDays(35), 35), why.Explain()[1]);
    }

    /// <summary>Away from before the window opens through the target, and in a second stretch a little longer.</summary>
    [Fact]
    public void Of_absences_that_follow_each_other_the_one_the_target_met_is_named()
    {
        LifeEventDays[] away =
        [
            LifeEventDays.Away(new(2026, 3, 30), new(2026, 4, 4)),
            LifeEventDays.Away(new(2026, 3, 20), new(2026, 4, 8)),
        ];

        var due = DueRule.DueWindowFor(Ask() with { Events = [.. away], Survival = _ => 0.95 });

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
            Assert.Throws<ArgumentException>(() => DueRule.DueWindowFor(Ask(targetDays: days))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void The_longest_target_is_taken() => Assert.Equal(Tuesday.PlusWeeks(8), DueRule.DueWindowFor(Ask(targetDays: 3660)).Target);

    [Fact]
    public void Without_a_hold_window_there_is_no_due_date() =>
        Assert.StartsWith(
            "A due date needs a hold window.",
            Assert.Throws<ArgumentException>(() => DueRule.DueWindowFor(Ask() with { Window = default })).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(0, 8)]
    [InlineData(5, 4)]
    [InlineData(4, 27)]
    public void A_hold_window_outside_1_to_26_weeks_or_turned_round_is_refused(int earliest, int latest) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new HoldWindow(earliest, latest));

    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 9)]
    public void A_window_without_its_target_cannot_be_said(int opensLater, int targetLater) =>
        Assert.Throws<ArgumentException>(() =>
            new DueWindow(Tuesday.PlusDays(opensLater), Tuesday.PlusDays(targetLater), Tuesday.PlusDays(8), Tuesday, default)
        );

    [Fact]
    public void A_due_date_costs_no_memory()
    {
        var question = Ask() with
        {
            PreferredWeekdays = WeekdaySet.Of(IsoDayOfWeek.Friday),
            Events = [LifeEventDays.Away(new(2026, 4, 1), new(2026, 4, 12)), LifeEventDays.OffBefore(new(2026, 4, 5), new(2026, 4, 6))],
            Survival = _ => 0.5,
        };
        _ = DueRule.DueWindowFor(question);

        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var repeat = 0; repeat < 1_000; repeat++)
            _ = DueRule.DueWindowFor(question);

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
