using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.HairSystems;

// What happens to a unit that is here: made ready, cleaned, moved, mended, lent, given, and its end.
public sealed partial class HairSystem
{
    /// <summary>The day of its first bond was wrong in an old book.</summary>
    /// <exception cref="Refusal">It would lie before a step it follows.</exception>
    public void CorrectFirstBondedOn(LocalDate on) => Move(State, Dates with { FirstBondedOn = on });

    public UnitStep NotePreparation(LocalDate on, UnitStepEntry entry) => Step(UnitStepKind.Prepared, on, entry, () => Prepare(on));

    /// <exception cref="Refusal">It is on a head, or not in house.</exception>
    public UnitStep MarkCleaning(UnitCleaning cleaning, LocalDate on, UnitStepEntry entry) =>
        Step(
            cleaning switch
            {
                UnitCleaning.Clean => UnitStepKind.Cleaned,
                UnitCleaning.Drying => UnitStepKind.LeftToDry,
                _ => UnitStepKind.SetForCleaning,
            },
            on,
            entry,
            () =>
            {
                if (!State.IsBondable())
                    throw NotNow();
                RequireHere(on);
                Cleaning = cleaning;
            }
        );

    /// <exception cref="Refusal">It is on a head, at a workshop, or gone.</exception>
    public UnitStep MoveTo(UnitPlace place, Guid? salonId, string? spot, LocalDate on, UnitStepEntry entry) =>
        Step(
            UnitStepKind.Moved,
            on,
            entry,
            () =>
            {
                if (
                    !State.IsBondable() && State is not (UnitState.Arrived or UnitState.Inspected or UnitState.Retired or UnitState.Damaged)
                )
                    throw NotNow();
                if (place == UnitPlace.Client && ClientId is null)
                    throw new Refusal("Unit {0} is in stock: lend it, or give it to a client.", Serial);
                if (place == UnitPlace.Client && State is UnitState.Arrived or UnitState.Inspected)
                    throw new Refusal("Unit {0} is {1}: inspect it before it leaves the salon.", Serial, State);
                RequireHere(on);
                switch (place)
                {
                    case UnitPlace.Salon:
                        PlaceAtSalon(salonId ?? throw new Refusal("Say in which salon it is.") { Field = "SalonId" }, spot);
                        break;
                    case UnitPlace.Client:
                        PlaceWithClient();
                        break;
                    default:
                        throw new Refusal("A unit goes to a workshop with an order or for a repair.");
                }
            }
        );

    /// <exception cref="Refusal">It is on a head, or not in house.</exception>
    public UnitStep SendForRepair(LocalDate on, RepairTrip trip, UnitStepEntry entry) =>
        Step(
            UnitStepKind.SentForRepair,
            on,
            entry,
            () =>
            {
                if (!State.IsBondable())
                    throw NotNow();
                RequireRepairable(on);
                _repairs.Add(new UnitRepair(entry.Id, Id, on, trip));
                Move(UnitState.Away, Dates);
                PlaceAtWorkshop();
            }
        );

    /// <exception cref="Refusal">It is not away, or was not yet on that day.</exception>
    public UnitStep BringBackFromRepair(LocalDate on, Guid salonId, long? costMinor, string? currency, UnitStepEntry entry) =>
        Step(
            UnitStepKind.BackFromRepair,
            on,
            entry,
            () =>
            {
                Require(UnitState.Away);
                // A trip on which it was lost, and found elsewhere, stays unfinished: the last one is this.
                var away = _repairs.Where(r => r.DoneOn is null).MaxBy(r => r.SentOn)!;
                if (on < away.SentOn)
                    throw new Refusal("It went out on {0}, so it cannot be back before.", away.SentOn) { Field = "On" };
                away.BringBack(on, costMinor, currency);
                Move(StateInHouse, Dates);
                PlaceAtSalon(salonId);
                // What others had in their hands is looked through and cleaned first.
                Cleaning = UnitCleaning.ToBeCleaned;
            }
        );

    /// <summary>Given out unglued to a client, for a time.</summary>
    /// <exception cref="Refusal">It is somebody's own, not in house, or not clean.</exception>
    public UnitStep LendOut(LocalDate on, UnitStepEntry entry) =>
        Step(
            UnitStepKind.Lent,
            on,
            entry,
            () =>
            {
                RequireLendable();
                RequireHere(on);
                Move(UnitState.Lent, Dates);
                PlaceWithClient();
            }
        );

    /// <exception cref="Refusal">It is not lent.</exception>
    public UnitStep TakeBackLoan(LocalDate on, Guid salonId, UnitLoan loan, UnitStepEntry entry) =>
        Step(
            UnitStepKind.BackFromLoan,
            on,
            entry,
            () =>
            {
                if (State is UnitState.Bonded)
                    throw new Refusal("Unit {0} is on a head: log its take-down first.", Serial);
                loan.BringBack(on);
                if (State is UnitState.Lent)
                    Move(StateInHouse, Dates);
                PlaceAtSalon(salonId);
                Cleaning = UnitCleaning.ToBeCleaned;
            }
        );

    /// <summary>Whether it may go on another's head: stock, sound and clean.</summary>
    /// <exception cref="Refusal">It may not.</exception>
    public void RequireLendable()
    {
        if (ClientId is not null)
            throw new Refusal("Unit {0} is another client's.", Serial);
        if (!State.IsBondable())
            throw NotNow();
        if (!IsReady)
            throw new Refusal("Unit {0} is not clean yet. Clean it, say so, and then lend it.", Serial);
    }

    /// <summary>A ready-made unit of nobody's becomes a client's own.</summary>
    /// <exception cref="Refusal">It is somebody's, or lent, or not here.</exception>
    public UnitStep GiveToClient(Guid clientId, LocalDate on, UnitStepEntry entry) =>
        Step(
            UnitStepKind.GivenToClient,
            on,
            entry,
            () =>
            {
                if (ClientId is not null)
                    throw new Refusal("Unit {0} is another client's.", Serial);
                if (!State.IsBondable())
                    throw NotNow();
                RequireHere(on);
                AssignToClient(clientId);
            }
        );

    /// <summary>How it looked as it was retired; null where nobody was asked, as in old books.</summary>
    public UnitEndLook? EndLook { get; private set; }

    /// <summary>The same as one more inspection, on the day it was retired.</summary>
    public UnitInspection? InspectionAsRetired() => Dates.RetiredOn is { } on ? EndLook?.ToInspection(on) : null;

    /// <param name="end">Retired, Lost, Damaged, ReturnedToClient, EmergencySpare, or Cancelled for a draft or an order.</param>
    /// <param name="look">Of one that is retired: what was said of how it looks; null where nobody was asked.</param>
    /// <exception cref="Refusal">It is on a head, or cannot end so; or what was said of it contradicts itself.</exception>
    public UnitStep LeaveService(UnitState end, LocalDate on, string because, UnitStepEntry entry, UnitEndLook? look = null) =>
        Step(
            end switch
            {
                UnitState.EmergencySpare => UnitStepKind.KeptAsSpare,
                UnitState.Lost => UnitStepKind.Lost,
                UnitState.Damaged => UnitStepKind.Damaged,
                UnitState.ReturnedToClient => UnitStepKind.ReturnedToClient,
                UnitState.Cancelled => UnitStepKind.Cancelled,
                _ => UnitStepKind.Retired,
            },
            on,
            entry,
            () =>
            {
                RequireEnd(end);
                LeaveService(end, on, because);
                EndLook = look?.EnsureValid(on);
            }
        );

    /// <summary>Lost, and there again: as it was before, and to be cleaned. Asked of a unit whose steps were read.</summary>
    /// <exception cref="Refusal">It is neither lost nor with a client.</exception>
    public UnitStep Find(LocalDate on, Guid salonId, UnitStepEntry entry) =>
        Step(
            UnitStepKind.Found,
            on,
            entry,
            () =>
            {
                if (State is not (UnitState.Lost or UnitState.ReturnedToClient))
                    throw NotNow();
                if (on < Dates.RetiredOn)
                    throw new Refusal("It has been gone since {0}: choose that day or later.", Dates.RetiredOn) { Field = "On" };
                // What was kept for an emergency before is no better for having been away.
                var before = _steps.Where(s => s.Stands && s.Before.State == UnitState.EmergencySpare).MaxBy(s => s.RecordedAt);
                var wasSpare = before?.After is { } gone && gone.State == State && gone.Dates.RetiredOn == Dates.RetiredOn;
                var dates = Dates with { RetiredOn = wasSpare ? before!.Before.Dates.RetiredOn : null };
                // A unit that was lost before it came has arrived with being found.
                Move(dates.ArrivedOn is null && dates.FirstBondedOn is null ? UnitState.Arrived : StateInHouseBy(dates), dates);
                if (State == UnitState.Arrived)
                    Dates = Dates with { ArrivedOn = on };
                RetiredBecause = null;
                PlaceAtSalon(salonId);
                Cleaning = UnitCleaning.ToBeCleaned;
            }
        );

    private UnitState StateInHouse => StateInHouseBy(Dates);

    /// <summary>Where a unit stands while it is in house, by what happened to it before.</summary>
    private static UnitState StateInHouseBy(UnitDates dates) =>
        dates.RetiredOn is not null ? UnitState.EmergencySpare
        : dates.FirstBondedOn is not null ? UnitState.Resting
        : dates.PreparedOn is not null ? UnitState.Prepared
        : dates.AcceptedOn is not null ? UnitState.Accepted
        : dates.InspectedOn is not null ? UnitState.Inspected
        : UnitState.Arrived;

    private void RequireEnd(UnitState end)
    {
        if (State == UnitState.Bonded)
            return;
        var allowed = end switch
        {
            UnitState.Cancelled => State == UnitState.Specified || State.IsInFlight(),
            UnitState.Lost => State is not UnitState.Specified && !State.IsGone(),
            UnitState.EmergencySpare => State.IsBondable() && State != UnitState.EmergencySpare,
            _ => State.IsBondable() || State is UnitState.Arrived or UnitState.Inspected,
        };
        if (!allowed)
            throw NotNow();
    }
}
