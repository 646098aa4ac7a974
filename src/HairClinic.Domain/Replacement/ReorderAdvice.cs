namespace HairClinic.Domain.Replacement;

/// <summary>
/// How a client's next unit stands on a day, as every page and list says it: from what was just calculated, or from what is kept of it.
/// </summary>
/// <remarks>
/// A gap is a day on which every unit in house is worn out and the next is not ready. Whoever wears a unit has hair on then, if hair that
/// no longer looks well: "without hair" is said only of a head that is bare with nothing in house to put on it.
/// </remarks>
public sealed record ReorderAdvice
{
    /// <summary>A last day to order within so many days is something to do.</summary>
    public const int SoonDays = 30;

    /// <param name="orderBy">As it was calculated; null where it had passed.</param>
    /// <param name="onHead">A unit is bonded today.</param>
    /// <param name="inHand">Bondable units that still wear well.</param>
    /// <param name="alpha">The chance of a gap that is accepted.</param>
    /// <param name="sparesMissing">Units that the practice always wants ready and that are neither in house nor under way.</param>
    public ReorderAdvice(
        LocalDate today,
        LocalDate? orderBy,
        bool onHead,
        int inHand,
        int inFlight,
        double beforeArrival,
        double alpha,
        int sparesMissing = 0
    )
    {
        (Today, InFlight, GapBeforeArrival, Alpha, SparesMissing) = (today, inFlight, beforeArrival, alpha, sparesMissing);
        // What was calculated on an earlier day may have passed since.
        OrderBy = orderBy >= today ? orderBy : null;
        Verdict =
            !onHead && inHand == 0 ? ReorderVerdict.WithoutHair
            : beforeArrival > alpha ? ReorderVerdict.OrderMayComeTooLate
            : OrderBy is not { } day ? ReorderVerdict.OrderNow
            : sparesMissing > 0 ? ReorderVerdict.SpareMissing
            : day <= today.PlusDays(SoonDays) ? ReorderVerdict.OrderSoon
            : ReorderVerdict.Wait;
    }

    public ReorderVerdict Verdict { get; }

    public LocalDate Today { get; }

    /// <summary>The last day to order; null where it has passed.</summary>
    public LocalDate? OrderBy { get; }

    /// <summary>What must be said with it.</summary>
    public ReorderWarnings Warnings { get; init; }

    public int InFlight { get; }

    public double GapBeforeArrival { get; }

    public double Alpha { get; }

    public int SparesMissing { get; }

    public required double GapIfOrderedToday { get; init; }

    /// <summary>Somebody must act now.</summary>
    public bool AtRisk => Verdict <= ReorderVerdict.OrderNow;

    /// <summary>There is something to do about it, today or soon.</summary>
    public bool IsToDo => Verdict < ReorderVerdict.Wait;
}

/// <summary>What to do about a client's next unit.</summary>
public enum ReorderVerdict
{
    /// <summary>Nothing on the head and nothing in house that could go on it: the only client of whom "without hair" is true.</summary>
    WithoutHair,

    /// <summary>The first order in flight may come after the hair in house is worn out; a new order lowers nothing.</summary>
    OrderMayComeTooLate,

    /// <summary>The last day to order has passed.</summary>
    OrderNow,

    /// <summary>There is time by the chance of a gap, but the spare that the practice always keeps ready is neither in house nor on order.</summary>
    SpareMissing,

    /// <summary>The last day to order is near: it is something to do.</summary>
    OrderSoon,

    /// <summary>There is time.</summary>
    Wait,
}
