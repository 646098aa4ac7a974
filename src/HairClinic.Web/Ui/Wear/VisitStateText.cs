using HairClinic.Web.Ui.Feedback;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Ui.Wear;

/// <summary>How a visit's state is said and marked.</summary>
public static class VisitStateText
{
    public static string Of(VisitState state, IStringLocalizer words) =>
        state switch
        {
            VisitState.Booked => words["booked"],
            VisitState.Arrived => words["arrived"],
            VisitState.InChair => words["in the chair"],
            VisitState.Done => words["done"],
            VisitState.Cancelled => words["called off"],
            _ => words["did not come"],
        };

    public static Mark MarkOf(VisitState state) =>
        state switch
        {
            VisitState.Booked => Mark.Open,
            VisitState.Arrived => Mark.Half,
            VisitState.InChair => Mark.Full,
            VisitState.Done => Mark.Done,
            _ => Mark.Barred,
        };
}
