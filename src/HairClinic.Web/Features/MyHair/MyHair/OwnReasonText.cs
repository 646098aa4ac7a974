using HairClinic.Web.Ui.Wear;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Why a client is due when they are, said to them: where the staff's sentence speaks of “the client”, this one says “you”.</summary>
public static class OwnReasonText
{
    public static string Of(DueReason reason, IStringLocalizer words, LocalDate today)
    {
        var (from, to) = (Ui.Dates.Day(reason.From, today), Ui.Dates.Day(reason.To, today));
        return reason.Rule switch
        {
            DueRuleName.PulledAheadOfEvent => words[
                "Moved to {0}, so that you are fresh {1} days before what you have planned.",
                to,
                reason.Amount ?? 0
            ],
            DueRuleName.MovedOutOfAbsence => words["You are away from {0} to {1}; nothing falls due then.", from, to],
            DueRuleName.MovedToPreferredWeekday => words["Moved from {0} to {1}, a weekday you like.", from, to],
            DueRuleName.MovedToOpenDay => words["{0} does not work; the nearest day that does is {1}.", from, to],
            DueRuleName.NoOpenDay => words["No open day could be found near {0}: choose one together with us.", to],
            _ => DueReasonText.Of(reason, words, today),
        };
    }
}
