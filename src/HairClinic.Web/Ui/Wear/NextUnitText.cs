using HairClinic.Domain.Replacement;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Ui.Wear;

/// <summary>A client's next order in a few words.</summary>
public static class NextUnitText
{
    public static string Of(ReorderOutlook outlook, IStringLocalizer words) =>
        outlook switch
        {
            { AtRisk: true, IsLate: false } => words["could be without hair before the unit on order is ready"],
            { OrderBy: { } day } => words["order by {0}", Dates.Day(day, outlook.Today)],
            _ => words["order now"],
        };

    /// <summary>The chance that matters most just now.</summary>
    public static string Chance(ReorderOutlook outlook, IStringLocalizer words) =>
        outlook switch
        {
            { GapBeforeArrival: var before } when before > outlook.Alpha => words[
                "{0} chance of a day without hair before the unit on order is ready",
                Percent(before)
            ],
            { IsLate: true } => words["{0} chance of a day without hair even if it is ordered today", Percent(outlook.GapIfOrderedToday)],
            { InFlight: > 0 } => words["One is on order; the one after it is ordered by then."],
            _ => words["Then the chance of a day without hair stays within {0}.", Percent(outlook.Alpha)],
        };

    /// <summary>Whole percent; what is not quite nothing or everything is not told as such.</summary>
    public static string Percent(double chance) =>
        chance switch
        {
            > 0 and < 0.01 => "< 1 %",
            > 0.99 and < 1 => "> 99 %",
            _ => $"{Math.Round(100 * chance)} %",
        };
}
