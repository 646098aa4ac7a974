using HairClinic.Domain.LoadAhead;
using HairClinic.Web.Language;
using NodaTime;

namespace HairClinic.Web.Features.Outlook.ReckonAnew;

/// <summary>How a run is spoken of.</summary>
public static class ReckonAnewText
{
    public static string Of(ReckoningStage stage) =>
        stage switch
        {
            ReckoningStage.Reading => "Reading the records",
            ReckoningStage.FittingHold => "Learning how long bonds hold",
            ReckoningStage.FittingLife => "Learning how long units last",
            ReckoningStage.Planning => "Planning each client’s next order",
            _ => "Storing the weeks ahead",
        };

    /// <summary>A stretch of time, as a sentence's key and its number.</summary>
    public static (string Words, int Number) Of(Duration took) =>
        took.TotalSeconds < 90
            ? ("{0} s", Math.Max(1, (int)Math.Round(took.TotalSeconds)))
            : ("{0} min", (int)Math.Round(took.TotalMinutes));
}
