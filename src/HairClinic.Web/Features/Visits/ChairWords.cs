using HairClinic.Web.Ui.Feedback;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Features.Visits;

/// <summary>How bonds, lifts and units are spoken of at the chair.</summary>
internal static class ChairWords
{
    public static string Of(RemovalReason reason, IStringLocalizer words) =>
        reason switch
        {
            RemovalReason.Scheduled => words["It was due"],
            RemovalReason.Lifted => words["It lifted"],
            RemovalReason.Reaction => words["Skin reaction"],
            RemovalReason.Style => words["New style"],
            RemovalReason.SalonsChoice => words["Our choice"],
            _ => words["Another reason"],
        };

    public static string Of(LiftZone zone, IStringLocalizer words) =>
        zone switch
        {
            LiftZone.Front => words["Front"],
            LiftZone.Temples => words["Temples"],
            LiftZone.Sides => words["Sides"],
            LiftZone.Crown => words["Crown"],
            LiftZone.Nape => words["Nape"],
            _ => words["Elsewhere"],
        };

    public static string Of(Attachment attachment, IStringLocalizer words) =>
        attachment switch
        {
            Attachment.Liquid => words["Liquid"],
            Attachment.Tape => words["Tape"],
            Attachment.Mixed => words["Liquid and tape"],
            _ => words["Clips"],
        };

    public static string Of(BondState state, IStringLocalizer words) =>
        state switch
        {
            BondState.Curing => words["curing"],
            BondState.Held => words["holding"],
            BondState.WindowOpen => words["window open"],
            BondState.Overdue => words["overdue"],
            BondState.Lifted => words["lifted"],
            _ => words["taken off"],
        };

    public static Mark MarkOf(BondState state) =>
        state switch
        {
            BondState.WindowOpen => Mark.Half,
            BondState.Overdue => Mark.Full,
            BondState.Lifted => Mark.Lifted,
            _ => Mark.Open,
        };

    /// <summary>Where a unit that could go on stands.</summary>
    public static string Of(UnitState state, IStringLocalizer words) =>
        state switch
        {
            UnitState.Bonded => words["on the head"],
            UnitState.Resting => words["resting"],
            UnitState.EmergencySpare => words["emergency spare"],
            _ => words["ready"],
        };

    /// <summary>Six grades in one line: “Knots 2, base 1”; those as new are left out.</summary>
    public static string Of(InspectionGrades grades, IStringLocalizer words)
    {
        (string Name, int? Grade)[] items =
        [
            (words["shedding"], grades.Shedding),
            (words["knots"], grades.Knots),
            (words["base"], grades.Base),
            (words["fit"], grades.Fit),
            (words["hair"], grades.Hair),
            (words["colour"], grades.Colour),
        ];
        var worn = items.Where(i => i.Grade > 0).Select(i => $"{i.Name} {i.Grade}").ToList();
        return worn.Count == 0 ? words["as new"] : string.Join(", ", worn);
    }
}
