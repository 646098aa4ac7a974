using System.Collections.Immutable;

namespace HairClinic.Domain.Wear;

/// <summary>The rule that dates a rebond the day a bond is made.</summary>
/// <remarks>
/// <para>The hold window counts calendar weeks from the day of application. The target is capped at the window's last
/// day; a target before the window opens the window early; no target falls inside the cure.</para>
/// <para>An event to be ready for asks for a rebond when the chance that this bond is sound to the event's last day, rounded to
/// three places, is below what the event wants, wherever in the window it lies: at least its own number of days before it begins, and
/// no later search passes that day. Where that day is not after application or falls inside the cure, the rebond is due on the first day after the
/// event, within the window, and no search goes before that. Of several events the one that asks for the earliest day decides. An event
/// that is over on the day of application asks nothing.</para>
/// <para>Before an event for which the bond has to be off a take-down is due, on the last open day before it, after the day of
/// application, whether the bond has cured or not. It takes the place of a rebond that would be due fewer than the event's own days
/// before it; a rebond due earlier is made, and the take-down then is the next bond's. Where the event had begun when the bond was made,
/// it is due on the first open day.</para>
/// <para>Then a day is chosen: an open day on a preferred weekday within three days of the target and inside the window;
/// else the nearest open day inside it; else the last open day before it and after the cure; else the bare target,
/// for a person to settle. The earlier of two equally near days is taken. Days away count as closed.</para>
/// </remarks>
public static class DueRule
{
    public const int PreferredReachDays = 3;
    public const int LongestTargetDays = 3660;

    /// <exception cref="ArgumentException">
    /// The window is unset, the target is not 1 to 3,660 days, or an event is to be ready for and nobody said how the bond holds.
    /// </exception>
    public static DueWindow DueWindowFor(in DueRuleInput question)
    {
        if (question.Window.EarliestWeeks == 0)
            throw new ArgumentException("A due date needs a hold window.", nameof(question));
        if (question.TargetDays is < 1 or > LongestTargetDays)
            throw new ArgumentException("A target is 1 to 3,660 days after application.", nameof(question));

        var appliedOn = question.AppliedOn;
        var applied = CivilDayNumber.Number(appliedOn);
        var closesOn = question.Window.Closes(appliedOn);
        var closes = applied + NodaConstants.DaysPerWeek * question.Window.LatestWeeks;
        var opens = applied + NodaConstants.DaysPerWeek * question.Window.EarliestWeeks;
        var cured = question.Cure.FirstClearDay(applied, question.Opening);
        var target = applied + question.TargetDays;
        var rules = DueReasons.Bit(DueRuleName.HoldWindow) | DueReasons.Bit(TargetRule(question.Learnt));

        if (target > closes)
        {
            target = closes;
            rules |= DueReasons.Bit(DueRuleName.TargetCappedAtCloses);
        }

        if (target < cured)
        {
            target = cured;
            rules |= DueReasons.Bit(DueRuleName.HeldUntilCured);
        }

        var plan = new DayPlan
        {
            Target = target,
            Opens = opens,
            Last = closes,
            Cured = cured,
            Rules = rules,
        };
        var events = question.Events.IsDefaultOrEmpty ? [] : question.Events.AsSpan();
        var search = new BookableDaySearch(question.Opening, events);
        var demand = events.IsEmpty ? default : EventDemand.Of(events, applied, cured, closes, question.Survival);
        var due = events.IsEmpty
            ? Choose(ref search, question.PreferredWeekdays, ref plan)
            : ChooseAmongEvents(ref search, events, applied, closes, question.PreferredWeekdays, demand, ref plan);
        (target, opens, rules) = (plan.Target, plan.Opens, plan.Rules);
        var absence = search.Absence < 0 ? default : events[search.Absence];
        if (search.Absence >= 0)
            rules |= DueReasons.Bit(DueRuleName.MovedOutOfAbsence);

        var dueOn = appliedOn.PlusDays(due - applied);
        var why = new DueReasons
        {
            AppliedOn = appliedOn,
            Window = question.Window,
            TargetDays = question.TargetDays,
            Learnt = question.Learnt,
            Cure = question.Cure,
            FirstClearDays = cured - applied,
            Demand = demand,
            DemandedDays = demand.Asks ? demand.Day - applied : 0,
            AwayFrom = absence.From,
            AwayThrough = absence.Through,
            DueOn = dueOn,
            Applied = rules,
        };
        return new(appliedOn.PlusDays(opens - applied), appliedOn.PlusDays(target - applied), closesOn, dueOn, why);
    }

    private static DueRuleName TargetRule(RebondTarget? learnt) =>
        learnt switch
        {
            { OwnBonds: > 0 } => DueRuleName.TargetFromOwnBonds,
            not null => DueRuleName.TargetFromPractice,
            null => DueRuleName.TargetFromPrior,
        };

    private static int ChooseAmongEvents(
        ref BookableDaySearch search,
        ReadOnlySpan<LifeEventDays> events,
        int applied,
        int closes,
        WeekdaySet preferred,
        in EventDemand demand,
        ref DayPlan plan
    )
    {
        var plain = plan;
        if (demand.Asks)
            plan.Heed(demand, closes);
        var due = Choose(ref search, preferred, ref plan);
        if (EventDemand.TakeDown(events, applied, due) is not { } begins)
            return due;

        plan = plain;
        search = search.Anew();
        var before = Math.Min(begins - 1, closes);
        due =
            before > applied
                ? search.LastBefore(before + 1, applied + 1)
                : search.Nearest(applied + 1, applied + 1, closes, closes - applied, WeekdaySet.Every);
        if (due == BookableDaySearch.NoDay)
        {
            due = Math.Max(before, applied + 1);
            plan.Note(DueRuleName.NoOpenDay);
        }

        plan.Note(DueRuleName.TakeDownBeforeEvent);
        plan.Target = due;
        plan.OpenEarly();
        return due;
    }

    private static int Choose(ref BookableDaySearch search, WeekdaySet preferred, ref DayPlan plan)
    {
        plan.OpenEarly();
        var (target, first, last) = (plan.Target, plan.AfterEvent ? plan.Target : plan.Opens, plan.Last);
        var day = search.Nearest(target, first, last, PreferredReachDays, preferred);
        var rule = DueRuleName.MovedToPreferredWeekday;
        if (day == BookableDaySearch.NoDay)
        {
            day = search.Nearest(target, first, last, Math.Max(target - first, last - target), WeekdaySet.Every);
            rule = DueRuleName.MovedToOpenDay;
        }

        // A bond that an event follows at once is itself the fresh one: nobody comes before it.
        if (day == BookableDaySearch.NoDay && !plan.AfterEvent)
        {
            day = search.LastBefore(plan.Opens, plan.Cured);
            rule = DueRuleName.MovedBeforeWindow;
        }

        if (day == BookableDaySearch.NoDay)
        {
            day = target;
            plan.Note(DueRuleName.NoOpenDay);
        }
        else if (day != target)
        {
            plan.Note(rule);
        }

        return day;
    }

    /// <summary>The days between which one is sought, as the rules one after another set them.</summary>
    private struct DayPlan
    {
        public int Target;
        public int Opens;
        public int Last;
        public int Cured;
        public int Rules;
        public bool AfterEvent;

        public void Note(DueRuleName rule) => Rules |= DueReasons.Bit(rule);

        public void OpenEarly()
        {
            if (Target >= Opens)
                return;
            Opens = Target;
            Note(DueRuleName.OpensEarlyAtTarget);
        }

        public void Heed(in EventDemand demand, int closes)
        {
            Last = Math.Min(closes, demand.LatestAhead);
            AfterEvent = demand.IsAfter;
            Note(DueRuleName.EventBeyondHold);
            if (demand.IsAfter)
            {
                Target = Math.Min(demand.Day, closes);
                Note(DueRuleName.MovedAfterEvent);
                return;
            }

            Note(demand.Day < Target ? DueRuleName.PulledAheadOfEvent : DueRuleName.KeptAheadOfEvent);
            Target = Math.Min(Target, demand.Day);
            if (demand.FreshPerMille < demand.Event.SoundPerMille)
                Note(DueRuleName.FreshBondFallsShort);
        }
    }
}

/// <summary>Everything a rebond's due date depends on.</summary>
/// <param name="AppliedOn">The civil day, in the salon's zone, on which the bond was made.</param>
/// <param name="Window">The practice's hold window for this base, adhesive and attachment.</param>
/// <param name="TargetDays">
/// Days after application to aim at, at least 1: <see cref="HoldPrior.TargetDays"/>, or what <see cref="Learnt"/> says.
/// </param>
/// <param name="Opening">The days the client's salon is open.</param>
public readonly record struct DueRuleInput(LocalDate AppliedOn, HoldWindow Window, int TargetDays, OpeningDays Opening)
{
    /// <summary>Weekdays the client likes to come; empty when any will do.</summary>
    public WeekdaySet PreferredWeekdays { get; init; }

    public Cure Cure { get; init; }

    /// <summary>Where the target comes from the practice's records; its days are the target's.</summary>
    public RebondTarget? Learnt { get; init; }

    /// <summary>Days to be ready for, to be off before and to be away, in any order. Past ones and those far off do no harm.</summary>
    public ImmutableArray<LifeEventDays> Events { get; init; }

    /// <summary>
    /// S(t): the chance that this client's bond still holds so many whole days after application. Asked only for an event inside the
    /// window to be ready for.
    /// </summary>
    public Func<int, double>? Survival { get; init; }
}

/// <summary>When a bond is due to be taken down, and made anew unless it <see cref="IsTakeDown"/>.</summary>
/// <param name="Opens">The first day of the window, early if this client's target or an event asks for it.</param>
/// <param name="Target">The day aimed at before looking for an open one.</param>
/// <param name="Closes">The last day of the practice's window; the bond is overdue from the day after.</param>
/// <param name="DueOn">The day to book.</param>
/// <param name="Why">What led there.</param>
/// <exception cref="ArgumentException">It opens after its target, or its target lies after it closes.</exception>
public readonly record struct DueWindow(LocalDate Opens, LocalDate Target, LocalDate Closes, LocalDate DueOn, DueReasons Why)
{
    public LocalDate Target { get; } =
        Opens <= Target && Target <= Closes
            ? Target
            : throw new ArgumentException($"A window from {Opens} to {Closes} has its target on {Target}.", nameof(Target));

    /// <summary>The bond comes off and none is made.</summary>
    public bool IsTakeDown => Why.Has(DueRuleName.TakeDownBeforeEvent);
}

/// <summary>Looks for days on which this client can come to this salon, and remembers an absence that stood in the way.</summary>
internal ref struct BookableDaySearch(OpeningDays opening, ReadOnlySpan<LifeEventDays> events)
{
    public const int NoDay = int.MinValue;

    private readonly ReadOnlySpan<LifeEventDays> _events = events;

    /// <summary>Place, among the events, of the absence that ruled out the first day otherwise right; −1 if none did.</summary>
    public int Absence { get; private set; } = -1;

    /// <summary>The same search before it met an absence.</summary>
    public readonly BookableDaySearch Anew() => new(opening, _events);

    /// <summary>The day inside [first, last] nearest to a target, within reach, the earlier on a tie.</summary>
    public int Nearest(int target, int first, int last, int reach, WeekdaySet weekdays)
    {
        for (var distance = 0; distance <= reach; distance++)
        {
            if (target - distance >= first && Suits(target - distance, weekdays))
                return target - distance;
            if (target + distance <= last && Suits(target + distance, weekdays))
                return target + distance;
        }

        return NoDay;
    }

    /// <summary>The last day before another, not before <paramref name="first"/>.</summary>
    public int LastBefore(int day, int first)
    {
        for (var earlier = day - 1; earlier >= first; earlier--)
        {
            if (Suits(earlier, WeekdaySet.Every))
                return earlier;
        }

        return NoDay;
    }

    private bool Suits(int day, WeekdaySet weekdays) =>
        (weekdays.Bits & CivilDayNumber.WeekdayBit(day)) != 0 && opening.IsOpen(day) && !IsAway(day);

    private bool IsAway(int day)
    {
        for (var index = 0; index < _events.Length; index++)
        {
            if (!_events[index].IsAway || !_events[index].Covers(day))
                continue;
            if (Absence < 0)
                Absence = index;
            return true;
        }

        return false;
    }
}
