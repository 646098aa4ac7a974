using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;

namespace HairClinic.Domain.Visits;

public sealed partial class Visit
{
    /// <summary>
    /// Logs that the bond comes off and no new one is made: it says how long it held, the unit is off the head, and nothing falls
    /// due until somebody bonds again. A unit that was lost at home leaves service with it.
    /// </summary>
    /// <param name="recordId">Id of the record to write.</param>
    /// <param name="worn">The open bond and its unit.</param>
    /// <param name="products">What it was taken down with.</param>
    /// <param name="noBondUntil">The first day on which the head may be bonded again; null where nobody said.</param>
    /// <param name="salon">Where the visit takes place: its zone gives the day.</param>
    /// <param name="wornLoan">Of a unit that was lent: it is back in the salon, or lost.</param>
    /// <returns>How long the bond held, as far as it is known.</returns>
    /// <exception cref="Refusal">
    /// The visit is logged or called off already, or its day has not come; it came off because it lifted and no edge was up; a day is
    /// impossible.
    /// </exception>
    /// <remarks>A visit of an earlier day is logged late: it came off on that day.</remarks>
    public HoldObservation RecordTakeDown(
        Guid recordId,
        (Bond Bond, HairSystem Unit, TakeDown Found) worn,
        IReadOnlyList<(Guid Id, AppliedProduct Use)> products,
        LocalDate? noBondUntil,
        Salon salon,
        Instant now,
        Guid? by,
        string? note,
        UnitLoan? wornLoan = null
    )
    {
        RequireNotLogged();
        var today = salon.DayOf(now);
        RequireDay(today);
        var (bond, unit, found) = worn;
        if (!found.Because.EndsWithTakeDown())
            throw new Refusal("Say why it came off: one that was only due is followed by a new bond.");
        if (found is { Because: RemovalReason.Lifted, FoundLifted: false })
            throw new Refusal("If it came off because it lifted, say that an edge was up.");
        var record = new VisitRecord(recordId, Id, unit.Id, found, now, by, note);
        record.SetTakeDownProducts(products);
        if (noBondUntil is { } until)
            bond.SetNoBondUntil(until, Day);
        TakeOff(bond, unit, found, Day);
        wornLoan?.BringBack(Day);
        Record = record;
        Finish(today);
        return HoldObservation.From(bond, Day);
    }
}
