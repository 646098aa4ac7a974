using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>A possible remedy for a gap, calculated before anybody promises it.</summary>
/// <param name="RushHalfDays">Half of rushed orders are here by then, in working days of the workshop; null leaves the usual lead. A hope, not a date.</param>
/// <param name="RepairDays">Worn days a repair adds to the hair in house.</param>
/// <param name="ExtraUnits">New units in hand at once, such as a ready-made one off the shelf.</param>
public sealed record ReorderScenario(int? RushHalfDays = null, int RepairDays = 0, int ExtraUnits = 0)
{
    /// <param name="each">A new unit's life.</param>
    /// <param name="usual">The lead of the kind that is ordered: a rushed one spreads as it does.</param>
    public ReorderInput ApplyTo(ReorderInput question, RemainingLife each, LeadTimePrior usual)
    {
        var hand = question.InHand.ToList();
        if (RepairDays > 0)
            hand.Add(RemainingLife.OfDays(RepairDays));
        hand.AddRange(Enumerable.Repeat(each with { WornDays = 0 }, ExtraUnits));
        return question with { InHand = hand, Lead = RushHalfDays is { } half ? Rushed(half, usual) : question.Lead };
    }

    private static LeadTimeTable Rushed(int half, LeadTimePrior usual) =>
        LeadTimeTable.FromLeadTime(LeadTime.Learn(usual.WithMedian(half), [], []), remakeRate: 0, inspectionDays: 0, LeadTime.Days);
}
