using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Visits;

public sealed partial class Visit
{
    // A stylist rounds the time up, and clocks of a tablet and a server differ.
    private static readonly Duration ClockTolerance = Duration.FromMinutes(5);

    /// <summary>The record written when the visit was logged; one a visit.</summary>
    public VisitRecord? Record { get; private set; }

    /// <summary>
    /// Logs a rebond: the old bond comes off and says how long it held, the unit (the same or the
    /// spare) goes on, and the new bond falls due by the practice's rule.
    /// </summary>
    /// <param name="recordId">Id of the record to write.</param>
    /// <param name="worn">The open bond and its unit; null at a first fitting.</param>
    /// <param name="made">The new bond.</param>
    /// <param name="salon">Where the visit takes place: its zone gives the day.</param>
    /// <param name="due">When the new bond falls due; what the take-down tells is in it already.</param>
    /// <param name="wornLoan">Of a unit that was lent and comes off: it ends, unless the unit goes on again.</param>
    /// <exception cref="Refusal">
    /// The visit is logged or called off already; the unit cannot be bonded, is someone else's, or is unfit and no
    /// emergency was confirmed; a date is impossible, or the visit's day has not come.
    /// </exception>
    public Bond RecordRebond(
        Guid recordId,
        (Bond Bond, HairSystem Unit, TakeDown Found)? worn,
        NewBond made,
        Salon salon,
        DueWindow due,
        Instant now,
        Guid? by,
        string? note,
        UnitLoan? wornLoan = null
    )
    {
        RequireNotLogged();
        RequireDay(salon.DayOf(now));
        Judge(made, worn?.Found, worn?.Unit, now);
        var day = salon.DayOf(made.AppliedAt);
        var record = new VisitRecord(recordId, Id, worn?.Unit.Id, worn?.Found, now, by, note);
        record.SetDryingWaitsKept(made.WaitsKept);
        if (worn is var (old, unit, found))
        {
            TakeOff(old, unit, found, day);
            // What was lent and does not go on again is back in the salon.
            if (unit != made.Unit)
                wornLoan?.BringBack(day);
        }

        made.Unit.PutOn(day);
        var bond = new Bond(made.Id, made.Unit.Id, ClientId, day, made.AppliedAt, made.Attachment, PersonId ?? by);
        bond.SetVisit(Id);
        bond.SetProducts(made.Products, made.WaitsKept);
        bond.SetDueWindow(due);
        Record = record;
        Finish(salon.DayOf(now));
        return bond;
    }

    private void RequireNotLogged()
    {
        if (Record is not null)
            throw new Refusal("This visit is logged already.");
        if (State is VisitState.Cancelled or VisitState.DidNotCome)
            throw new Refusal("This visit is {0} already.", State);
    }

    private void Judge(NewBond made, TakeDown? found, HairSystem? worn, Instant now)
    {
        if (found?.Because.AllowsNewBond() == false)
            throw new Refusal("After this no bond is made. Log the take-down only.");
        if (made.Unit == worn && found?.Because == RemovalReason.LostAtHome)
            throw new Refusal("Unit {0} is {1}: it cannot be bonded.", made.Unit.Serial, UnitState.Lost);
        if (made.AppliedAt > now + ClockTolerance)
            throw new Refusal("The bond cannot have been finished later than now.");
        if (made.Unit.ClientId is { } owner && owner != ClientId)
            throw new Refusal("Unit {0} is another client's.", made.Unit.Serial);
        if (made.Unit != worn && !made.Unit.State.IsBondable())
            throw new Refusal("Unit {0} is {1}: it cannot be bonded.", made.Unit.Serial, made.Unit.State);
        if (made.Unit != worn && !made.Unit.IsReady && !made.Cleaned)
            throw new Refusal("Unit {0} is not clean yet: clean it, and say that you did.", made.Unit.Serial);
        if (made.Unit != worn && made.Unit.ClientId is null && made.Loan is null)
            throw new Refusal("Unit {0} is nobody’s: say on which day it is due back.", made.Unit.Serial) { Field = "DueBackOn" };
        if (made.Unit == worn && found?.KnownGrades.IsAtLeast(InspectionGrades.Unfit) == true && !made.Emergency)
            throw new Refusal("Unit {0} is unfit. Bond the spare, or confirm that this is an emergency.", made.Unit.Serial);
    }

    private void TakeOff(Bond old, HairSystem unit, TakeDown found, LocalDate day)
    {
        found.WornOutOn?.RequireReached(day, nameof(TakeDown.WornOutOn));
        if (found.ToLift(day) is { } lift)
            old.ReportLift(lift);
        old.Remove(found.OffOn(day), found.Reason);
        unit.TakeOff(SalonId);
        if (found.Reason == RemovalReason.LostAtHome)
            unit.LeaveService(UnitState.Lost, found.OffOn(day), "lost at home");
    }
}

/// <summary>The bond made at a visit, as the stylist logs it.</summary>
/// <param name="AppliedAt">When the last edge went down.</param>
/// <param name="WaitsKept">Whether each coat was left to dry.</param>
/// <param name="Emergency">The stylist confirmed a second time that an unfit unit goes on, so that nobody is left without hair.</param>
public sealed record NewBond(
    Guid Id,
    HairSystem Unit,
    Instant AppliedAt,
    Attachment Attachment,
    IReadOnlyList<(Guid Id, AppliedProduct Use)> Products,
    bool? WaitsKept,
    bool Emergency = false
)
{
    /// <summary>The stylist said that they cleaned it, where it was still to be cleaned.</summary>
    public bool Cleaned { get; init; }

    /// <summary>Of a unit of nobody's: the loan it goes on with.</summary>
    public UnitLoan? Loan { get; init; }
}
