namespace HairClinic.Web.Ui.Wear;

/// <summary>A client's next unit in a few words, the same on every page and list.</summary>
public static class NextUnitText
{
    /// <summary>What there is to do.</summary>
    public static string Advice(ReorderAdvice standing, IStringLocalizer words) =>
        standing switch
        {
            { Verdict: ReorderVerdict.WithoutHair, InFlight: > 0 } => words["without hair until the unit on order is ready"],
            { Verdict: ReorderVerdict.WithoutHair } => words["without hair: order now"],
            { Verdict: ReorderVerdict.OrderMayComeTooLate } => words["may lack a good unit before the one on order is ready"],
            { Verdict: ReorderVerdict.SpareMissing } => words["order a spare"],
            { OrderBy: { } day } when day == standing.Today => words["order today"],
            { OrderBy: { } day } when day == standing.Today.PlusDays(1) => words["order by tomorrow, {0}", Dates.Day(day, standing.Today)],
            { OrderBy: { } day } => words["order by {0}", Dates.Day(day, standing.Today)],
            _ => words["order now"],
        };

    /// <summary>Why, in sentences: the chance that matters most just now, and what moved it.</summary>
    public static string Why(ReorderAdvice standing, IStringLocalizer words) =>
        string.Join(" ", [Chance(standing, words), .. Warnings(standing, words)]);

    private static IEnumerable<string> Warnings(ReorderAdvice standing, IStringLocalizer words)
    {
        var (wearsFast, weakerSince, forgottenSince) = standing.Warnings;
        if (wearsFast)
            yield return words["What they wear wears faster than its age: look at the spare."];
        if (weakerSince is { } since)
            yield return words["Units that their workshop has delivered since {0} seem to last shorter.", Dates.Day(since, standing.Today)];
        if (forgottenSince is { } on)
            yield return words[
                "The order of {0} is not counted on: it is far overdue, and nobody has said that it is still on its way.",
                Dates.Day(on, standing.Today)
            ];
    }

    private static string Chance(ReorderAdvice standing, IStringLocalizer words) =>
        standing switch
        {
            { Verdict: ReorderVerdict.WithoutHair } => words["Nothing is on the head, and no unit in house can be bonded."],
            { Verdict: ReorderVerdict.OrderMayComeTooLate } => words[
                "{0} chance that no unit still wears well before the one on order is ready; a new order would not lower it.",
                Percent(standing.GapBeforeArrival)
            ],
            { OrderBy: null } => words[
                "{0} chance that for a day or more no unit still wears well, even if one is ordered today.",
                Percent(standing.GapIfOrderedToday)
            ],
            { Verdict: ReorderVerdict.SpareMissing } => standing.SparesMissing == 1
                ? words["A spare is always to be ready, and one is missing: it is neither in house nor on order."]
                : words[
                    "Spares are always to be ready, and {0} are missing: they are neither in house nor on order.",
                    standing.SparesMissing
                ],
            { InFlight: > 0 } => words["One is on order; the one after it is ordered by then."],
            _ => words["Then the chance that for a day or more no unit still wears well stays within {0}.", Percent(standing.Alpha)],
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
