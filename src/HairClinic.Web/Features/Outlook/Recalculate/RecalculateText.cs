using HairClinic.Domain.LoadAhead;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How a run is spoken of.</summary>
public static class RecalculateText
{
    public static string Of(RecalculationStage stage) =>
        stage switch
        {
            RecalculationStage.Reading => "Reading the records",
            RecalculationStage.FittingHold => "Learning how long bonds hold",
            RecalculationStage.FittingLife => "Learning how long units last",
            RecalculationStage.Planning => "Planning each client’s next order",
            _ => "Storing the weeks ahead",
        };

    /// <summary>A stretch of time, as a sentence's key and its number.</summary>
    public static (string Words, int Number) Of(Duration took) =>
        took.TotalSeconds < 90
            ? ("{0} s", Math.Max(1, (int)Math.Round(took.TotalSeconds)))
            : ("{0} min", (int)Math.Round(took.TotalMinutes));
}
