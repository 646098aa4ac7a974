using HairClinic.Web.Language;

namespace HairClinic.Web.Ui.Wear;

/// <summary>Why a rebond falls due when it does, in words: one sentence for each rule that shaped the date.</summary>
public static class DueReasonText
{
    /// <param name="today">The salon's day: years are left out while they are this year's.</param>
    public static IReadOnlyList<string> All(IEnumerable<DueReason> reasons, IStringLocalizer words, LocalDate? today = null) =>
        [.. reasons.Select(reason => Of(reason, words, today))];

    /// <summary>Each sentence has the same blanks: the rule's amount, up to how much, from which day, to which day.</summary>
    /// <param name="toClient">Where the staff's sentence speaks of “the client”, theirs says “you”.</param>
    public static string Of(DueReason reason, IStringLocalizer words, LocalDate? today = null, bool toClient = false) =>
        words.Word(
            reason.Rule,
            reason is { Rule: DueRuleName.TargetFromOwnBonds, UpTo: 1 } ? "OfOne"
                : toClient ? "Own"
                : null,
            reason.Amount ?? 0,
            reason.UpTo ?? reason.Amount ?? 0,
            Dates.Day(reason.From, today),
            Dates.Day(reason.To, today)
        );
}
