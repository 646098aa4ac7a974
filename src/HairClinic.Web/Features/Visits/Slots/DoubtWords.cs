using HairClinic.Web.Language;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Features.Visits;

internal static class DoubtWords
{
    /// <summary>What is kept with a visit that was booked all the same, under what was noted anyway.</summary>
    public static string? Noted(string? note, IReadOnlyList<Doubt> doubts, IStringLocalizer words) =>
        doubts.Count == 0
            ? note
            : string.Join(
                '\n',
                [
                    .. string.IsNullOrWhiteSpace(note) ? Array.Empty<string>() : [note],
                    words["Agreed all the same:"] + " " + string.Join(' ', doubts.Select(d => words.Word(d))),
                ]
            );
}
