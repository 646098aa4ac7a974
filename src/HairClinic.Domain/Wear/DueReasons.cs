using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear;

/// <summary>Why a due date is what it is: a few numbers, spelt out by <see cref="Explain"/> when somebody asks.</summary>
/// <remarks>Kept flat so that computing a million due dates allocates nothing. Store what Explain returns.</remarks>
public readonly record struct DueReasons
{
    internal LocalDate AppliedOn { get; init; }
    internal HoldWindow Window { get; init; }
    internal int TargetDays { get; init; }
    internal RebondTarget? Learnt { get; init; }
    internal Cure Cure { get; init; }
    internal int FirstClearDays { get; init; }
    internal EventDemand Demand { get; init; }
    internal int DemandedDays { get; init; }
    internal LocalDate AwayFrom { get; init; }
    internal LocalDate AwayThrough { get; init; }
    internal LocalDate DueOn { get; init; }
    internal int Applied { get; init; }

    /// <summary>Whether a rule shaped the date.</summary>
    public bool Has(DueRuleName rule) => (Applied & Bit(rule)) != 0;

    /// <summary>The rules that shaped the date, in the order they were applied.</summary>
    public IReadOnlyList<DueReason> Explain()
    {
        var target = AppliedOn.PlusDays(TargetDays);
        var reasons = new List<DueReason>(6)
        {
            new(DueRuleName.HoldWindow, AppliedOn, Closes, Window.EarliestWeeks, Window.LatestWeeks),
            Learnt switch
            {
                { OwnBonds: > 0 } own => new(
                    DueRuleName.TargetFromOwnBonds,
                    AppliedOn.PlusDays(own.UnknownDays),
                    target,
                    TargetDays,
                    own.OwnBonds
                ),
                not null => new(DueRuleName.TargetFromPractice, AppliedOn, target, TargetDays),
                null => new(DueRuleName.TargetFromPrior, AppliedOn, target, TargetDays),
            },
        };
        if (Has(DueRuleName.TargetCappedAtCloses))
            Shift(DueRuleName.TargetCappedAtCloses, Closes, null);
        if (Has(DueRuleName.HeldUntilCured))
            Shift(DueRuleName.HeldUntilCured, AppliedOn.PlusDays(FirstClearDays), Cure.Hours);
        target = ExplainEvents(reasons, target);
        if (Has(DueRuleName.OpensEarlyAtTarget))
            reasons.Add(new(DueRuleName.OpensEarlyAtTarget, Window.Opens(AppliedOn), target));
        if (Has(DueRuleName.MovedOutOfAbsence))
            reasons.Add(new(DueRuleName.MovedOutOfAbsence, AwayFrom, AwayThrough));
        for (var rule = DueRuleName.MovedToPreferredWeekday; rule <= DueRuleName.NoOpenDay; rule++)
        {
            if (Has(rule))
                reasons.Add(new(rule, target, DueOn));
        }

        return reasons;

        void Shift(DueRuleName rule, LocalDate to, int? amount)
        {
            reasons.Add(new(rule, target, to, amount));
            target = to;
        }
    }

    /// <returns>The target as the events leave it.</returns>
    private LocalDate ExplainEvents(List<DueReason> reasons, LocalDate target)
    {
        var (planned, demanded) = (Demand.Event, AppliedOn.PlusDays(DemandedDays));
        if (Has(DueRuleName.EventBeyondHold))
            reasons.Add(new(DueRuleName.EventBeyondHold, planned.From, planned.Through, Demand.PerMille, planned.SoundPerMille));
        if (Has(DueRuleName.PulledAheadOfEvent))
            reasons.Add(new(DueRuleName.PulledAheadOfEvent, target, target = demanded, planned.DaysAhead));
        if (Has(DueRuleName.KeptAheadOfEvent))
            reasons.Add(new(DueRuleName.KeptAheadOfEvent, target, demanded, planned.DaysAhead));
        if (Has(DueRuleName.MovedAfterEvent))
            reasons.Add(new(DueRuleName.MovedAfterEvent, target, target = LocalDate.Min(demanded, Closes), planned.DaysAhead));
        if (Has(DueRuleName.FreshBondFallsShort))
            reasons.Add(new(DueRuleName.FreshBondFallsShort, demanded, planned.Through, Demand.FreshPerMille, planned.SoundPerMille));
        if (Has(DueRuleName.TakeDownBeforeEvent))
            reasons.Add(new(DueRuleName.TakeDownBeforeEvent, target, target = DueOn));
        return target;
    }

    internal static int Bit(DueRuleName rule) => 1 << (int)rule;

    private LocalDate Closes => Window.Closes(AppliedOn);
}

/// <summary>One step of how a due date came about, as data that a screen puts into words.</summary>
/// <param name="Rule">Which rule acted; its documentation says what the other values mean for it.</param>
/// <param name="From">The date the rule started from.</param>
/// <param name="To">The date it led to.</param>
/// <param name="Amount">The weeks, days or hours the rule speaks of, where it does.</param>
/// <param name="UpTo">The upper end where the rule speaks of a range.</param>
public readonly record struct DueReason(DueRuleName Rule, LocalDate From, LocalDate To, int? Amount = null, int? UpTo = null);

public static class DueReasonExtensions
{
    /// <summary>Whether what is due is a take-down without a new bond.</summary>
    public static bool AskForTakeDown(this IEnumerable<DueReason> reasons) =>
        reasons.Any(reason => reason.Rule == DueRuleName.TakeDownBeforeEvent);
}

/// <summary>A rebond's target as the practice's own records have it.</summary>
/// <param name="Days">After application; at least 1.</param>
/// <param name="OwnBonds">Bonds of this client behind it; 0 where only other clients' are.</param>
/// <param name="UnknownDays">What it would be for a client of whom nothing is known.</param>
public readonly record struct RebondTarget(int Days, int OwnBonds, int UnknownDays)
{
    /// <param name="effect">xᵀβ of what is known of the client and the bond.</param>
    /// <param name="fitted">The practice's records were fitted.</param>
    /// <returns>Null where the window alone decides: no bond says anything of them, and nothing known of them counts.</returns>
    public static RebondTarget? FromModel(
        PopulationParameters population,
        ClientEffectNodes client,
        WindowPrior window,
        double effect,
        bool fitted
    )
    {
        if (client.Own == 0 && !fitted && effect == 0)
            return null;
        return new(Target(client), client.Own, Target(ClientEffectNodes.For(population)));

        int Target(ClientEffectNodes nodes) =>
            new LifePrediction(population, nodes, window.Place, effect).LastDayAtOrAbove(HoldPrior.TargetSurvival);
    }
}
