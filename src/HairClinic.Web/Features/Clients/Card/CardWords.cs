using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Feedback;
using HairClinic.Web.Ui.Wear;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Features.Clients;

/// <summary>States and kinds as the card says them.</summary>
public static class CardWords
{
    public static (Mark Mark, bool Wants, string Text) Of(BondState state, IStringLocalizer words) =>
        state switch
        {
            BondState.Curing => (Mark.Half, false, words["curing"]),
            BondState.Held => (Mark.Open, false, words["held"]),
            BondState.WindowOpen => (Mark.Half, false, words["window open"]),
            BondState.Overdue => (Mark.Full, true, words["overdue"]),
            BondState.Lifted => (Mark.Lifted, true, words["lifted"]),
            _ => (Mark.Done, false, words["taken off"]),
        };

    public static string Of(UnitState state, IStringLocalizer words) =>
        state switch
        {
            UnitState.Specified => words["specified"],
            UnitState.Ordered => words["ordered"],
            UnitState.Acknowledged => words["acknowledged"],
            UnitState.Shipped => words["shipped"],
            UnitState.Arrived => words["arrived"],
            UnitState.Inspected => words["inspected"],
            UnitState.Remake => words["sent back for a remake"],
            UnitState.Accepted => words["accepted"],
            UnitState.Prepared => words["prepared"],
            UnitState.Bonded => words["on the head"],
            UnitState.Resting => words["resting"],
            UnitState.Retired => words["retired"],
            UnitState.Lost => words["lost"],
            UnitState.Damaged => words["damaged"],
            UnitState.ReturnedToClient => words["returned to the client"],
            _ => words["emergency spare"],
        };

    public static string Of(ContactKind kind, IStringLocalizer words) =>
        kind switch
        {
            ContactKind.Rang => words["rang"],
            ContactKind.RangNoAnswer => words["rang, no answer"],
            ContactKind.Messaged => words["messaged"],
            ContactKind.SlotOffered => words["slot offered"],
            _ => words["put off"],
        };

    public static string Of(Attachment attachment, IStringLocalizer words) =>
        attachment switch
        {
            Attachment.Liquid => words["liquid adhesive"],
            Attachment.Tape => words["tape"],
            Attachment.Mixed => words["adhesive and tape"],
            _ => words["clips"],
        };

    /// <summary>The lift in a sentence: when, where, and what was done.</summary>
    public static string Of(Lift lift, LocalDate today, IStringLocalizer words)
    {
        string when = lift.LiftedOn is { } day
            ? words["Lifted on {0}", Dates.Day(day, today)]
            : words["Reported lifted on {0}, day not known", Dates.Day(lift.ReportedOn, today)];
        var where = lift.Zone is { } zone ? ", " + words[ZoneText.Of(zone)] : "";
        return when + where + (lift.SpotFixed ? words["; spot-fixed."] : words["."]);
    }
}
