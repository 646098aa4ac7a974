using HairClinic.Web.Ui.Feedback;

namespace HairClinic.Web.Ui.Wear;

/// <summary>The shape each state is drawn with, the same on every screen.</summary>
public static class StateMarks
{
    public static Mark Of(BondState state) =>
        state switch
        {
            BondState.Held => Mark.Open,
            BondState.Curing or BondState.WindowOpen => Mark.Half,
            BondState.Overdue => Mark.Full,
            BondState.Lifted => Mark.Lifted,
            _ => Mark.Done,
        };

    public static Mark Of(VisitState state) =>
        state switch
        {
            VisitState.Booked => Mark.Open,
            VisitState.Arrived => Mark.Half,
            VisitState.InChair => Mark.Full,
            VisitState.Done => Mark.Done,
            _ => Mark.Barred,
        };
}
