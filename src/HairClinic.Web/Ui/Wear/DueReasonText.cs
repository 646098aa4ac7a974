using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Ui.Wear;

/// <summary>Why a rebond falls due when it does, in words: one sentence for each rule that shaped the date.</summary>
public static class DueReasonText
{
    /// <param name="today">The salon's day: years are left out while they are this year's.</param>
    public static IReadOnlyList<string> All(IEnumerable<DueReason> reasons, IStringLocalizer words, LocalDate? today = null) =>
        [.. reasons.Select(reason => Of(reason, words, today))];

    /// <exception cref="ArgumentOutOfRangeException">A rule that has no sentence yet.</exception>
    public static string Of(DueReason reason, IStringLocalizer words, LocalDate? today = null)
    {
        var from = Dates.Day(reason.From, today);
        var to = Dates.Day(reason.To, today);
        var amount = reason.Amount ?? 0;
        return reason.Rule switch
        {
            DueRuleName.HoldWindow => words[
                "This base and adhesive hold {0} to {1} weeks from the day of the bond, {2}; the window closes on {3}.",
                amount,
                reason.UpTo ?? amount,
                from,
                to
            ],
            DueRuleName.TargetFromPrior => words["Four in five bonds of this kind still hold after {0} days, on {1}.", amount, to],
            DueRuleName.TargetFromOwnBonds when reason.UpTo == 1 => words[
                "By this client’s own bond before, four in five still hold after {0} days, on {1}; for a client not yet known it would be {2}.",
                amount,
                to,
                from
            ],
            DueRuleName.TargetFromOwnBonds => words[
                "By this client’s own {0} bonds before, four in five still hold after {1} days, on {2}; for a client not yet known it would be {3}.",
                reason.UpTo ?? 0,
                amount,
                to,
                from
            ],
            DueRuleName.TargetFromPractice => words[
                "By this practice’s own bonds, four in five of this kind still hold after {0} days, on {1}.",
                amount,
                to
            ],
            DueRuleName.TargetCappedAtCloses => words["That is after the window closes, so the window’s last day counts: {0}.", to],
            DueRuleName.HeldUntilCured => words["No rebond before the bond has cured ({0} hours): not before {1}.", amount, to],
            DueRuleName.PulledAheadOfEvent => words[
                "Moved ahead of an event of the client’s, to be fresh {0} days before it: {1}.",
                amount,
                to
            ],
            DueRuleName.OpensEarlyAtTarget => words["The window would open on {0}; here it opens earlier, on {1}.", from, to],
            DueRuleName.MovedOutOfAbsence => words["The client is away from {0} to {1}; nothing falls due then.", from, to],
            DueRuleName.MovedToPreferredWeekday => words["Moved from {0} to {1}, a weekday the client prefers.", from, to],
            DueRuleName.MovedToOpenDay => words["The salon is closed on {0} or the client away; the nearest open day is {1}.", from, to],
            DueRuleName.MovedBeforeWindow => words["No day inside the window is open; the last open day before it is {0}.", to],
            DueRuleName.NoOpenDay => words["No open day could be found near {0}: choose a day together with the client.", to],
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason.Rule, "This rule has no sentence."),
        };
    }
}
