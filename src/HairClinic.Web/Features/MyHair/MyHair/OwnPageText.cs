using HairClinic.Web.Ui.Wear;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Features.MyHair;

/// <summary>What a client reads about their bond and their next unit. The localiser's keys.</summary>
public static class OwnPageText
{
    private static readonly Duration FirstHours = Duration.FromHours(4);

    /// <summary>What may be done in each stretch of the cure. Common practice, no source; the label and the salon come first.</summary>
    public static string Cure(Instant appliedAt, Instant curedAt, Instant now) =>
        now - appliedAt < FirstHours
            ? "The first hours matter most: touch it as little as you can, stay cool, and wear nothing tight over it."
        : curedAt - now > FirstHours
            ? "A quiet day is fine: a walk, work at a desk, sleep on a soft pillow. No water, no sweat, no sport, nothing warm near it."
        : "Almost there. Keep it dry and cool until the time is up; then you may wash and move as usual.";

    /// <summary>How the next unit is getting on, in kind words; no maker, no price.</summary>
    public static string Order(UnitState state) =>
        state switch
        {
            UnitState.Ordered => "It is ordered.",
            UnitState.Acknowledged => "It is being made.",
            UnitState.Shipped => "It is on its way to us.",
            UnitState.Arrived or UnitState.Inspected => "It has arrived and is being looked at.",
            UnitState.Remake => "We were not happy with it yet, so it is being made again.",
            _ => "It is here and waits for you.",
        };

    /// <summary>Why they are due when they are: where the staff's sentence speaks of “the client”, this one says “you”.</summary>
    public static string Reason(DueReason reason, IStringLocalizer words, LocalDate today)
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
