using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Visits;

public sealed partial class Visit
{
    /// <summary>The record written when the visit was logged; one a visit.</summary>
    public VisitRecord? Record { get; private set; }

    /// <summary>
    /// Logs a rebond: the old bond comes off and says how long it held, the unit (the same or the
    /// spare) goes on, and the new bond falls due by the practice's rule.
    /// </summary>
    /// <param name="recordId">Id of the record to write.</param>
    /// <param name="worn">The open bond and its unit; null at a first fitting.</param>
    /// <param name="made">The new bond.</param>
    /// <param name="basis">What the due rule needs to know of salon, window and client.</param>
    /// <exception cref="Refusal">The visit is logged or called off already, or the unit cannot be bonded.</exception>
    public Bond RecordRebond(
        Guid recordId,
        (Bond Bond, HairSystem Unit, TakeDown Found)? worn,
        NewBond made,
        Salon salon,
        Func<LocalDate, DueWindow> basis,
        Instant now,
        Guid? by,
        string? note
    )
    {
        if (Record is not null)
            throw new Refusal("This visit is logged already.");
        var day = salon.DayOf(made.AppliedAt);
        Record = new VisitRecord(recordId, Id, worn?.Unit.Id, worn?.Found, now, by, note);
        Record.NoteWaits(made.WaitsKept);
        if (worn is var (old, unit, found))
            TakeOff(old, unit, found, day);

        made.Unit.PutOn(day);
        var bond = new Bond(made.Id, made.Unit.Id, ClientId, day, made.AppliedAt, made.Attachment, PersonId ?? by);
        bond.MadeAt(Id);
        bond.Use(made.Products, made.WaitsKept);
        bond.FallDue(basis(day));
        Finish();
        return bond;
    }

    private static void TakeOff(Bond old, HairSystem unit, TakeDown found, LocalDate day)
    {
        if (found.FoundLifted)
            old.ReportLift(new Lift(day, found.LiftedOn, found.LiftZone, SpotFixed: false));
        else
            old.SeenSound(day);
        old.Remove(day, found.FoundLifted && found.Because == RemovalReason.Scheduled ? RemovalReason.Lifted : found.Because);
        unit.TakeOff();
    }
}
