using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;

namespace HairClinic.Domain.Visits;

public sealed partial class Visit
{
    /// <summary>
    /// Takes a log back on the day it was written, by whoever wrote it or a manager: the visit is in the chair again,
    /// the new bond is marked as taken back, and the old one is on the head as before. Whoever calls it deletes the record.
    /// </summary>
    /// <param name="made">The bond the log made and its unit; null when it made none.</param>
    /// <param name="madeWasFirst">No earlier bond was made with that unit.</param>
    /// <param name="before">The bond that was on the head when the visit began, and its unit; null at a first fitting.</param>
    /// <param name="bondedSince">Another bond was made on this head after the log was written.</param>
    /// <param name="salon">Its zone says whether the day is still the same.</param>
    /// <param name="mayCorrectOthers">Owner or manager.</param>
    /// <param name="endedLoan">Of a unit of nobody's that came off: the loan that ended with it.</param>
    /// <returns>The record to delete.</returns>
    /// <exception cref="Refusal">Not logged, another day, another's log, or something was built on it since.</exception>
    public VisitRecord UndoRecord(
        (Bond Bond, HairSystem Unit)? made,
        bool madeWasFirst,
        (Bond Bond, HairSystem Unit)? before,
        bool bondedSince,
        Salon salon,
        Instant now,
        Guid? by,
        bool mayCorrectOthers,
        UnitLoan? endedLoan = null
    )
    {
        var record = Record ?? throw new Refusal("This visit is not logged.");
        if (salon.DayOf(record.RecordedAt) != salon.DayOf(now))
            throw new Refusal("A log can be taken back only on the day it was written.");
        if (record.RecordedBy != by && !mayCorrectOthers)
            throw new Refusal("Only the one who logged it, or a manager, can take it back.");
        if (made is { Bond: { } built } && (!built.IsOpen || built.Lift is not null || built.LastSoundOn is not null))
            throw new Refusal("Something was written about the new bond since. It can no longer be taken back.");
        if (made is null && record.RemovedUnitId is not null && (bondedSince || before is null))
            throw new Refusal("This head was bonded again since. Take that log back first.");
        // The day on which a lift that the log tells of was found: a visit of an earlier day may be logged late.
        var found = made?.Bond.AppliedOn ?? (record.RemovedUnitId is null ? salon.DayOf(record.RecordedAt) : Day);
        if (made is var (wrong, on))
        {
            on.UndoPutOn(madeWasFirst && on != before?.Unit, SalonId);
            wrong.MarkTakenBack();
        }
        if (before is var (old, off))
        {
            if (record.RemovedUnitId is not null)
            {
                var reason = old.RemovedBecause;
                old.UndoRemoval();
                if (reason == RemovalReason.LostAtHome)
                    FindAgain(off);
                off.PutOn(old.AppliedOn);
                endedLoan?.UndoBringBack();
            }
            if (record.FoundLifted)
                old.ForgetLift(found);
        }
        Record = null;
        State = VisitState.InChair;
        HoldsClient = true;
        return record;
    }

    // It was never lost: as it was a moment after it came off.
    private static void FindAgain(HairSystem unit)
    {
        if (unit.State != UnitState.Lost)
            throw new Refusal("Unit {0} is {1}: it cannot be bonded.", unit.Serial, unit.State);
        unit.ImportState(UnitState.Resting, unit.Dates with { RetiredOn = null }, retiredBecause: null, unit.RemadeTimes);
    }

    /// <summary>Undoes the last change of state: a slip of the finger, or a client who comes after all. It occupies its chair and stylist again.</summary>
    /// <remarks>They may be taken by now: the database then refuses.</remarks>
    /// <exception cref="Refusal">It is still booked, or over.</exception>
    public void UndoStateChange()
    {
        var released = !State.IsLive();
        State = State switch
        {
            VisitState.InChair => VisitState.Arrived,
            VisitState.Arrived or VisitState.DidNotCome or VisitState.Cancelled => VisitState.Booked,
            _ => throw new Refusal("This visit is {0}: there is nothing to take back.", State),
        };
        // A visit that stood aside still does; one that was released takes its client's time again.
        HoldsClient |= released;
        HoldsChair = ChairId is not null;
        foreach (var segment in _segments)
            segment.Occupy();
    }
}
