using HairClinic.Domain.Wear;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Ui.Wear;

/// <summary>Puts one reason of a due date into words. The reasons are data; only screens speak.</summary>
public static class DueReasonText
{
    public static string Of(DueReason reason, IStringLocalizer<Words> words) =>
        reason.Rule switch
        {
            DueRuleName.HoldWindow => words["Bonded on {0}; this kind of bond is renewed after {1} to {2} weeks.", Day(reason.From), reason.Amount!, reason.UpTo!],
            DueRuleName.TargetFromPrior => words["Four in five such bonds still hold on {0}, day {1}.", Day(reason.To), reason.Amount!],
            DueRuleName.TargetCappedAtCloses => words["Not later than {0}, when the window closes.", Day(reason.To)],
            DueRuleName.HeldUntilCured => words["Not before it has set, on {0}.", Day(reason.To)],
            DueRuleName.PulledAheadOfEvent => words["Brought forward to {0}, ahead of something planned.", Day(reason.To)],
            DueRuleName.OpensEarlyAtTarget => words["The window opens early, on {0}.", Day(reason.To)],
            DueRuleName.MovedOutOfAbsence => words["Away from {0} to {1}.", Day(reason.From), Day(reason.To)],
            DueRuleName.MovedToPreferredWeekday => words["Moved to {0}, a weekday they like.", Day(reason.To)],
            DueRuleName.MovedToOpenDay => words["Moved to {0}, the nearest day the salon is open.", Day(reason.To)],
            DueRuleName.MovedBeforeWindow => words["Moved to {0}, the last open day before the window.", Day(reason.To)],
            DueRuleName.NoOpenDay => words["No open day was found: choose one with the salon."],
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason.Rule, "A rule without words."),
        };

    private static string Day(NodaTime.LocalDate day) => Dates.Day(day);
}
