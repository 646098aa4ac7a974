using HairClinic.Web.Ui.Wear;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Features.Clients;

/// <summary>A remedy in a sentence.</summary>
public static class RemedyText
{
    public static string Of(Remedy remedy, IStringLocalizer words) =>
        remedy switch
        {
            { Kind: RemedyKind.Spare, What: { } unit } => words["put the spare on, {0}.", unit],
            { Kind: RemedyKind.WornSpare, What: { } unit } => words["keep {0} ready: it is worn, and good for an emergency only.", unit],
            { Kind: RemedyKind.OffTheShelf, What: { } units, Then: { } then } => words[
                "offer a ready-made unit off the shelf: {0}. The chance of a gap is then {1}.",
                units,
                NextUnitText.Percent(then)
            ],
            { Kind: RemedyKind.OffTheShelf, Then: { } then } => words[
                "no ready-made unit is on the shelf; with one, the chance of a gap would be {0}.",
                NextUnitText.Percent(then)
            ],
            { Kind: RemedyKind.Repair, Days: { } days } => words["a repair that buys {0} days would be enough.", days],
            { Kind: RemedyKind.Repair } => words["a repair buys days, but not enough by itself."],
            { Kind: RemedyKind.Rush, Days: { } days, Then: { } then } => words[
                "ask for a rushed order: were half of them here in {0} days, the chance of a gap would be {1}. That is a hope, not a date.",
                days,
                NextUnitText.Percent(then)
            ],
            _ => words["ask the workshop about {0}: what it says is a hope, not a date.", remedy.What ?? ""],
        };
}
