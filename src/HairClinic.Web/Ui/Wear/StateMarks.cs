using HairClinic.Web.Ui.Feedback;

namespace HairClinic.Web.Ui.Wear;

/// <summary>The shape each state is drawn with, the same on every screen.</summary>
public static class StateMarks
{
    public static StateMark Of(BondState state) =>
        state switch
        {
            BondState.Held => StateMark.Open,
            BondState.Curing or BondState.WindowOpen => StateMark.Half,
            BondState.Overdue => StateMark.Full,
            BondState.Lifted => StateMark.Lifted,
            _ => StateMark.Done,
        };

    public static StateMark Of(VisitState state) =>
        state switch
        {
            VisitState.Booked => StateMark.Open,
            VisitState.Arrived => StateMark.Half,
            VisitState.InChair => StateMark.Full,
            VisitState.Done => StateMark.Done,
            _ => StateMark.Barred,
        };
}
