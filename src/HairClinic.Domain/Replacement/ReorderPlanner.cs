using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Replacement;

/// <summary>A client's next order as an answer in days of the calendar, the two questions about gaps kept apart.</summary>
public static class ReorderPlanner
{
    /// <param name="rule">One a thread.</param>
    /// <param name="unitKindId">What would be ordered.</param>
    /// <param name="each">A new unit of that kind.</param>
    /// <param name="working">The salon's days on which an order can go out.</param>
    public static ReorderOutlook Plan(
        ReorderRule rule,
        ReorderInput question,
        LocalDate today,
        Guid unitKindId,
        RemainingLife each,
        OpeningDays working
    )
    {
        var answer = rule.Answer(question);
        var (gap, days) = BeforeArrival(rule, question);
        var orderBy = ReorderRule.LastOrderDay(today, answer, working);
        var missing = SpareRule.Missing(question.Spares, question.InHand.Count - question.Lent, question.InFlight.Count);
        // Whoever orders today because today is the last day orders one at least, though as much would last a day longer.
        var least = Math.Max(missing, orderBy is { } day && day > today ? 0 : 1);
        return new(today, unitKindId, question.Alpha, answer, orderBy)
        {
            SparesMissing = missing,
            InHand = question.InHand.Count,
            InFlight = question.InFlight.Count,
            GapBeforeArrival = gap,
            DaysBeforeArrival = days,
            HairEndDates = Ends(rule, question, today),
            Quantity = rule.Quantity(question, each) is { } enough ? Math.Max(enough, least) : null,
        };
    }

    /// <summary>The greater of the two chances of a gap, and nothing of the rest: for trying what would lower it.</summary>
    public static double LargerGapChance(ReorderRule rule, ReorderInput question) =>
        Math.Max(rule.Answer(question).GapIfOrderedToday, BeforeArrival(rule, question).Gap);

    // The first order in flight stands where a new order stands: nothing else is under way before it.
    private static (double Gap, double Days) BeforeArrival(ReorderRule rule, ReorderInput question)
    {
        if (question.InFlight.Count == 0)
            return (0, 0);
        var first = question.InFlight[0];
        var before = rule.Answer(question with { InFlight = [], Lead = first.Lead, Workshop = first.Workshop });
        return (before.GapIfOrderedToday, before.ExpectedDaysWithoutHair);
    }

    private static HairEndDates? Ends(ReorderRule rule, ReorderInput question, LocalDate today)
    {
        if (question.InHand.Count == 0)
            return null;
        Span<int?> days = [null, null, null];
        rule.HairEndQuantiles(question with { InFlight = [] }, [0.1, 0.5, 0.9], days);
        return days is [{ } early, { } half, { } late] ? new(today.PlusDays(early), today.PlusDays(half), today.PlusDays(late)) : null;
    }
}

/// <summary>The days by which hair is worn out with 10, 50 and 90 % chance.</summary>
public sealed record HairEndDates(LocalDate Early, LocalDate Half, LocalDate Late);

/// <summary>One client's next order, answered in days of the calendar.</summary>
/// <param name="Today">The salon's day.</param>
/// <param name="UnitKindId">What would be ordered.</param>
/// <param name="Alpha">The chance of a gap that is accepted.</param>
/// <param name="Answer">If nothing in flight counts against it: when a new order must go out.</param>
/// <param name="OrderBy">The last working day to order; null where it has passed.</param>
public sealed record ReorderOutlook(LocalDate Today, Guid UnitKindId, double Alpha, ReorderAnswer Answer, LocalDate? OrderBy)
{
    /// <summary>Bondable units in house that still wear.</summary>
    public int InHand { get; init; }

    public int InFlight { get; init; }

    /// <summary>Before the first order in flight is ready; no new order lowers it.</summary>
    public double GapBeforeArrival { get; init; }

    public double DaysBeforeArrival { get; init; }

    /// <summary>When the hair in house is worn out; null where there is none, or it outlasts what is in sight.</summary>
    public HairEndDates? HairEndDates { get; init; }

    /// <summary>Units to order: so that hair outlasts the next order and the spares are ready; null where a dozen would not do.</summary>
    public int? Quantity { get; init; }

    /// <summary>Units that the practice's rule wants in house or under way and that are not.</summary>
    public int SparesMissing { get; init; }

    public double GapIfOrderedToday => Answer.GapIfOrderedToday;

    public double ExpectedDaysWithoutHair => Answer.ExpectedDaysWithoutHair + DaysBeforeArrival;

    /// <summary>The day to order has passed.</summary>
    public bool IsLate => OrderBy is null;

    public bool AtRisk => IsLate || GapBeforeArrival > Alpha;

    /// <summary>What must be said with it.</summary>
    public ReorderWarnings Warnings { get; init; }

    /// <summary>A unit is bonded today.</summary>
    public bool OnHead { get; init; }

    public ReorderAdvice Standing =>
        new(Today, OrderBy, OnHead, InHand, InFlight, GapBeforeArrival, Alpha, SparesMissing)
        {
            GapIfOrderedToday = GapIfOrderedToday,
            Warnings = Warnings,
        };
}
