namespace HairClinic.Domain.Replacement;

/// <summary>
/// One client's next order as calculated on a day: stored so that lists can be sorted by it. The client's own page calculates
/// it again.
/// </summary>
public sealed class ReorderPlan : PracticeOwned
{
    private ReorderPlan() { }

    public ReorderPlan(Guid id, Guid clientId) => (Id, ClientId) = (id, clientId);

    public Guid ClientId { get; private set; }

    /// <summary>The salon's day for which it was calculated.</summary>
    public LocalDate PlannedFor { get; private set; }

    /// <summary>What would be ordered: the kind of the client's newest unit.</summary>
    public Guid UnitKindId { get; private set; }

    public int InHand { get; private set; }
    public int InFlight { get; private set; }

    /// <summary>The last day to order; null where it has passed.</summary>
    public LocalDate? OrderBy { get; private set; }

    /// <summary>The chance of a gap if the next unit is ordered today.</summary>
    public double GapIfOrderedToday { get; private set; }

    /// <summary>The chance of a gap before the first order in flight is ready; 0 where there is none.</summary>
    public double GapBeforeArrival { get; private set; }

    /// <summary>Of both together, within a year.</summary>
    public double ExpectedDaysWithoutHair { get; private set; }

    /// <summary>The days by which, with 10, 50 and 90 % chance, the hair in house is worn out.</summary>
    public LocalDate? HairEndsEarly { get; private set; }

    public LocalDate? HairEndsHalf { get; private set; }
    public LocalDate? HairEndsLate { get; private set; }

    /// <summary>Units to order so that hair outlasts the next order; null where a dozen would not do.</summary>
    public int? Quantity { get; private set; }

    /// <summary>Units that the practice always wants ready and that are neither in house nor under way.</summary>
    public int SparesMissing { get; private set; }

    /// <summary>The chance is beyond what the practice accepts: somebody must act.</summary>
    public bool AtRisk { get; private set; }

    /// <summary>A unit in house looks more worn than its age says: look at the spare.</summary>
    public bool WearsFast { get; private set; }

    /// <summary>Units of theirs are among those that an alarm named, delivered since this day.</summary>
    public LocalDate? WeakerSince { get; private set; }

    /// <summary>An order of theirs that went out on this day may be forgotten, and is not counted on.</summary>
    public LocalDate? ForgottenSince { get; private set; }

    /// <param name="today">The day it is read on.</param>
    /// <param name="onHead">A unit is bonded then.</param>
    /// <param name="alpha">The chance of a gap that is accepted.</param>
    public ReorderAdvice AdviceOn(LocalDate today, bool onHead, double alpha) =>
        new(today, OrderBy, onHead, InHand, InFlight, GapBeforeArrival, alpha, SparesMissing)
        {
            GapIfOrderedToday = GapIfOrderedToday,
            Warnings = new(WearsFast, WeakerSince, ForgottenSince),
        };

    public void Store(ReorderOutlook outlook)
    {
        PlannedFor = outlook.Today;
        UnitKindId = outlook.UnitKindId;
        (InHand, InFlight) = (outlook.InHand, outlook.InFlight);
        OrderBy = outlook.OrderBy;
        GapIfOrderedToday = outlook.GapIfOrderedToday;
        GapBeforeArrival = outlook.GapBeforeArrival;
        ExpectedDaysWithoutHair = outlook.ExpectedDaysWithoutHair;
        (HairEndsEarly, HairEndsHalf, HairEndsLate) = (outlook.HairEndDates?.Early, outlook.HairEndDates?.Half, outlook.HairEndDates?.Late);
        (Quantity, SparesMissing) = (outlook.Quantity, outlook.SparesMissing);
        AtRisk = outlook.AtRisk;
        (WearsFast, WeakerSince, ForgottenSince) = outlook.Warnings;
    }
}
