using NodaTime;

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
    public static DueWindow WindowFor(in DueQuestion question)
    {
        if (question.Window.EarliestWeeks == 0)
            throw new ArgumentException("A due date needs a hold window.", nameof(question));
        if (question.TargetDays is < 1 or > LongestTargetDays)
            throw new ArgumentException("A target is 1 to 3,660 days after application.", nameof(question));

        var appliedOn = question.AppliedOn;
        var applied = CivilDay.Number(appliedOn);
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
            last = target = CivilDay.Number(events[pulling].From) - daysAhead;
            rules |= DueReasons.Bit(DueRuleName.PulledAheadOfEvent);
        }

        if (target < opens)
        {
            opens = target;
            rules |= DueReasons.Bit(DueRuleName.OpensEarlyAtTarget);
        }

        var search = new DaySearch(question.Opening, events);
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

    private static DueRuleName TargetRule(LearntTarget? learnt) =>
        learnt switch
        {
            { OwnBonds: > 0 } => DueRuleName.TargetFromOwnBonds,
            not null => DueRuleName.TargetFromPractice,
            null => DueRuleName.TargetFromPrior,
        };

    private static int Pulling(ReadOnlySpan<ClientEvent> events, int opens, int target, int cured)
    {
        var deciding = -1;
        for (var index = 0; index < events.Length; index++)
        {
            var begins = CivilDay.Number(events[index].From);
            var latest = begins - events[index].DaysAhead;
            if (begins < opens || latest >= target || latest < cured)
                continue;
            target = latest;
            deciding = index;
        }

        return deciding;
    }

    private static int Choose(ref DaySearch search, WeekdaySet preferred, int target, int opens, int last, int cured, ref int rules)
    {
        var day = search.Nearest(target, opens, last, PreferredReachDays, preferred);
        var rule = DueRuleName.MovedToPreferredWeekday;
        if (day == DaySearch.NoDay)
        {
            day = search.Nearest(target, opens, last, Math.Max(target - opens, last - target), WeekdaySet.Every);
            rule = DueRuleName.MovedToOpenDay;
        }

        if (day == DaySearch.NoDay)
        {
            day = search.LastBefore(opens, cured);
            rule = DueRuleName.MovedBeforeWindow;
        }

        if (day == DaySearch.NoDay)
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
