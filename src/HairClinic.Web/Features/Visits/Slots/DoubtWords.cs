using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Features.Visits;

internal static class DoubtWords
{
    public static string Of(Doubt doubt, IStringLocalizer words) =>
        doubt switch
        {
            Doubt.Past => words["This time is past."],
            Doubt.OutsideOpeningHours => words["The salon is closed at that time, or closes before the visit ends."],
            Doubt.PersonNotAtWork => words["This person is not at work at that time."],
            Doubt.AskStylistFirst => words["Ask a stylist before booking this client."],
            _ => words["This person does not do this service alone yet."],
        };

    /// <summary>What is kept with a visit that was booked all the same, under what was noted anyway.</summary>
    public static string? Noted(string? note, IReadOnlyList<Doubt> doubts, IStringLocalizer words) =>
        doubts.Count == 0
            ? note
            : string.Join(
                '\n',
                [
                    .. string.IsNullOrWhiteSpace(note) ? Array.Empty<string>() : [note],
                    words["Agreed all the same:"] + " " + string.Join(' ', doubts.Select(d => Of(d, words))),
                ]
            );
}
