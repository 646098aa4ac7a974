namespace HairClinic.Domain.Replacement;

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
    public HairEnds? HairEnds { get; init; }

    public int? Quantity { get; init; }

    public double GapIfOrderedToday => Answer.GapIfOrderedToday;

    public double ExpectedDaysWithoutHair => Answer.ExpectedDaysWithoutHair + DaysBeforeArrival;

    /// <summary>The day to order has passed.</summary>
    public bool IsLate => OrderBy is null;

    public bool AtRisk => IsLate || GapBeforeArrival > Alpha;

    /// <summary>A unit is bonded today.</summary>
    public bool OnHead { get; init; }

    public OrderStanding Standing =>
        new(Today, OrderBy, OnHead, InHand, InFlight, GapBeforeArrival, Alpha) { GapIfOrderedToday = GapIfOrderedToday };
}
