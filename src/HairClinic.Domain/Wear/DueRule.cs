using System.Collections.Immutable;

namespace HairClinic.Domain.Wear;

/// <summary>The rule that dates a rebond the day a bond is made.</summary>
/// <remarks>
/// <para>The hold window counts calendar weeks from the day of application. The target is capped at the window's last
/// day; a target before the window opens the window early; no target falls inside the cure.</para>
/// <para>An event pulls the target ahead of it (by its own number of days) when it begins on or after the day the window
/// opens and the target would come later than that. Earlier events meet a bond that is still young and are left alone,
/// and so is one so soon after application that the day ahead of it would fall inside the cure: that bond is itself the fresh
/// one. Of several events the one that asks for the earliest day decides. Pulled ahead, the rebond stays ahead:
/// no later search passes that day.</para>
/// <para>Then a day is chosen: an open day on a preferred weekday within three days of the target and inside the window;
/// else the nearest open day inside it; else the last open day before it and after the cure; else the bare target,
/// for a person to settle. The earlier of two equally near days is taken. Days away count as closed.</para>
/// </remarks>
public static class DueRule
{
    public const int PreferredReachDays = 3;
    public const int LongestTargetDays = 3660;

    /// <exception cref="ArgumentException">The window is unset, or the target is not 1 to 3,660 days.</exception>
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

        var events = question.Events.IsDefaultOrEmpty ? [] : question.Events.AsSpan();
        var last = closes;
        var daysAhead = 0;
        var pulling = Pulling(events, Math.Min(opens, target), target, cured);
        if (pulling >= 0)
        {
            daysAhead = events[pulling].DaysAhead;
            last = target = CivilDayNumber.Number(events[pulling].From) - daysAhead;
            rules |= DueReasons.Bit(DueRuleName.PulledAheadOfEvent);
        }

        if (target < opens)
        {
            opens = target;
            rules |= DueReasons.Bit(DueRuleName.OpensEarlyAtTarget);
        }

        var search = new BookableDaySearch(question.Opening, events);
        var due = Choose(ref search, question.PreferredWeekdays, target, opens, last, cured, ref rules);
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
            PulledToDays = last - applied,
            DaysAhead = daysAhead,
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

    private static int Pulling(ReadOnlySpan<LifeEventDays> events, int opens, int target, int cured)
    {
        var deciding = -1;
        for (var index = 0; index < events.Length; index++)
        {
            var begins = CivilDayNumber.Number(events[index].From);
            var latest = begins - events[index].DaysAhead;
            if (begins < opens || latest >= target || latest < cured)
                continue;
            target = latest;
            deciding = index;
        }

        return deciding;
    }

    private static int Choose(ref BookableDaySearch search, WeekdaySet preferred, int target, int opens, int last, int cured, ref int rules)
    {
        var day = search.Nearest(target, opens, last, PreferredReachDays, preferred);
        var rule = DueRuleName.MovedToPreferredWeekday;
        if (day == BookableDaySearch.NoDay)
        {
            day = search.Nearest(target, opens, last, Math.Max(target - opens, last - target), WeekdaySet.Every);
            rule = DueRuleName.MovedToOpenDay;
        }

        if (day == BookableDaySearch.NoDay)
        {
            day = search.LastBefore(opens, cured);
            rule = DueRuleName.MovedBeforeWindow;
        }

        if (day == BookableDaySearch.NoDay)
        {
            day = target;
            rules |= DueReasons.Bit(DueRuleName.NoOpenDay);
        }
        else if (day != target)
        {
            rules |= DueReasons.Bit(rule);
        }

        return day;
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

    /// <summary>Dates to be ready for and days away, in any order. Past ones and those far off do no harm.</summary>
    public ImmutableArray<LifeEventDays> Events { get; init; }
}

/// <summary>When a bond is due to be taken down and made anew.</summary>
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
}

/// <summary>Looks for days on which this client can come to this salon, and remembers an absence that stood in the way.</summary>
internal ref struct BookableDaySearch(OpeningDays opening, ReadOnlySpan<LifeEventDays> events)
{
    public const int NoDay = int.MinValue;

    private readonly ReadOnlySpan<LifeEventDays> _events = events;

    /// <summary>Place, among the events, of the absence that ruled out the first day otherwise right; −1 if none did.</summary>
    public int Absence { get; private set; } = -1;

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
