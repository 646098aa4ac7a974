using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Units;

/// <summary>One step of a unit's way: what happened, on which day, and the little that belongs to it.</summary>
public sealed partial class TakeStep(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <param name="forClientId">Of a unit of nobody's that is lent or given: to whom.</param>
    /// <returns>Null: no such unit or client, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid unitId, UnitStepKind step, Guid? forClientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var found = await (
            from unit in db.HairSystems.AsNoTracking().Include(u => u.Arrivals).Include(u => u.Repairs).Include(u => u.Promises)
            where unit.Id == unitId
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
            join workshop in db.Workshops on kind.WorkshopId equals workshop.Id into made
            from workshop in made.DefaultIfEmpty()
            select new
            {
                Unit = unit,
                Kind = kind.Name,
                Base = material.Name,
                Workshop = workshop == null ? null : workshop.Name,
                Loan = db.UnitLoans.FirstOrDefault(l => l.HairSystemId == unit.Id && l.BackOn == null),
                Order = db.WorkshopOrders.FirstOrDefault(o => o.Id == unit.OrderId),
                // Whoever retires it is asked how it looks.
                Written = db
                    .VisitRecords.Where(r => step == UnitStepKind.Retired && r.RemovedUnitId == unit.Id)
                    .Select(r => new WrittenGrades(
                        r.Grades.Shedding,
                        r.Grades.Knots,
                        r.Grades.Base,
                        r.Grades.Fit,
                        r.Grades.Hair,
                        r.Grades.Colour,
                        r.RecordedAt
                    ))
                    .ToList(),
            }
        ).SingleOrDefaultAsync(cancellation);
        if (found is null)
            return null;
        var whose = await WhoseAsync(db, found.Unit.ClientId ?? forClientId ?? found.Loan?.ClientId, cancellation);
        if (forClientId is not null && whose is null)
            return null;
        var salon = await UnitSalon.LoadAsync(db, found.Unit.PlaceSalonId, whose?.Id, current.Person, cancellation);
        var salons = await UnitSalon.ChoicesAsync(db, current.Person, cancellation);
        var today = salon.DayOf(clock.GetCurrentInstant());
        var at = found.Unit.PlaceSalonId ?? found.Order?.SalonId ?? salon.Id;
        return new Screen(found.Unit, found.Kind, found.Base, found.Workshop, whose, today, salons)
        {
            MayTake = UnitNextSteps
                .After(found.Unit.State, found.Unit.Cleaning, found.Unit.ClientId is null, found.Loan is not null)
                .Contains(step),
            Claim = found.Unit.CurrentArrival,
            SeesMoney = StaffPermissions.MaySeeMoney(current.Person.StaffRole),
            Last = LastGrades.From(found.Written, DateTimeZoneProviders.Tzdb[salon.Zone]),
            Start = new Input
            {
                UnitId = unitId,
                Step = step,
                // Since when it is gone is asked.
                On = step == UnitStepKind.Lost ? null : today,
                ClientId = forClientId,
                SalonId = UnitSalon.Prefer(salons, at),
                Currency = salon.Currency,
                SentTo = found.Workshop,
                Spot = found.Unit.Spot,
            },
        };
    }

    /// <exception cref="Refusal">The domain says no, or the unit is not there any more.</exception>
    /// <exception cref="OvertakenException">Someone changed this unit at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(TakeStep), input, db => WriteAsync(db, key, input, cancellation), cancellation);
        }
        catch (DbUpdateException e)
            when (WriteOnce.ViolatesConstraint(e, UnitArrivalMap.EachOnce) || WriteOnce.ViolatesConstraint(e, UnitLoanMap.OpenPerUnit))
        {
            throw new Refusal("Somebody did this a moment ago. Open the unit again to see it.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        // One after another: whoever comes second is told what the unit is by now.
        await WriteLock.LockAsync(db, nameof(TakeStep), input.UnitId, cancellation);
        var unit = await UnitCorrections.LoadAsync(db, input.UnitId, cancellation);
        if (input.SalonId is { } at && !current.Person.Salons.Contains(at))
            throw new Refusal("Say in which salon it is.") { Field = nameof(Input.SalonId) };
        var loan = await db.UnitLoans.SingleOrDefaultAsync(l => l.HairSystemId == unit.Id && l.BackOn == null, cancellation);
        if (unit.State == UnitState.Lent && loan is null)
            throw UnitCorrections.LentElsewhere(unit);
        var salon = await UnitSalon.LoadAsync(
            db,
            unit.PlaceSalonId ?? input.SalonId,
            unit.ClientId ?? loan?.ClientId ?? input.ClientId,
            current.Person,
            cancellation
        );
        var now = clock.GetCurrentInstant();
        var entry = new UnitStepEntry(
            key,
            salon.DayOf(now),
            now,
            current.Actor.Id,
            await db.Bonds.Where(b => b.HairSystemId == unit.Id).MaxAsync(b => b.RemovedOn, cancellation),
            input.Note
        );
        if (input.Step is UnitStepKind.Lent or UnitStepKind.GivenToClient)
            await RequireClientAsync(db, input, cancellation);
        var claim =
            input.Step == UnitStepKind.Arrived
                ? await db
                    .UnitKinds.Where(k => k.Id == unit.UnitKindId)
                    .Join(db.Workshops, k => k.WorkshopId, w => w.Id, (_, w) => (int?)w.ClaimDays)
                    .SingleOrDefaultAsync(cancellation)
                : null;
        Take(db, unit, loan, input, claim, entry);
        if (input.Step == UnitStepKind.Arrived)
            await OrderDateChecker.AskAsync(db, [unit], entry.Today, cancellation);
        // Also where only something beside the unit's row is written, two at the same moment are told apart by its version.
        db.Entry(unit).Property(u => u.State).IsModified = true;
        return new Outcome(unit.Id, unit.Serial, unit.State, unit.ClientId ?? loan?.ClientId ?? input.ClientId);
    }

    private static void Take(ClinicDb db, HairSystem unit, UnitLoan? loan, Input input, int? claimDays, UnitStepEntry entry)
    {
        var on = input.DayOf(entry.Today);
        var salonId = input.SalonId ?? Guid.Empty;
        switch (input.Step)
        {
            case UnitStepKind.Acknowledged:
                unit.NoteAcknowledgement(on, entry);
                break;
            case UnitStepKind.Promised:
                unit.NotePromise(on, input.PromisedFor!.Value, input.SaidBy, orderPromiseId: null, entry);
                break;
            case UnitStepKind.Shipped:
                unit.NoteShipping(on, entry);
                break;
            case UnitStepKind.Arrived:
                unit.Receive(on, salonId, input.Damaged == true, input.Condition, claimDays, entry);
                break;
            case UnitStepKind.Inspected:
                unit.InspectArrival(on, input.ToFindings(), input.PromisedFor, entry);
                break;
            case UnitStepKind.Prepared:
                unit.NotePreparation(on, entry);
                break;
            case UnitStepKind.Cleaned or UnitStepKind.LeftToDry or UnitStepKind.SetForCleaning:
                unit.MarkCleaning(CleaningAfter(input.Step), on, entry);
                break;
            case UnitStepKind.Moved:
                unit.MoveTo(input.WithClient ? UnitPlace.Client : UnitPlace.Salon, input.SalonId, input.Spot, on, entry);
                break;
            case UnitStepKind.SentForRepair:
                unit.SendForRepair(on, new RepairTrip(input.Repair!.Value, input.SentTo, input.PromisedFor, input.Note), entry);
                break;
            case UnitStepKind.BackFromRepair:
                unit.BringBackFromRepair(on, salonId, input.CostMinor, input.Currency, entry);
                break;
            case UnitStepKind.Lent:
                db.UnitLoans.Add(new UnitLoan(entry.Id, unit.Id, input.ClientId!.Value, on, input.DueBackOn!.Value));
                unit.LendOut(on, entry);
                break;
            case UnitStepKind.BackFromLoan:
                unit.TakeBackLoan(on, salonId, loan ?? throw new Refusal("Unit {0} is lent to nobody.", unit.Serial), entry);
                break;
            case UnitStepKind.GivenToClient:
                unit.GiveToClient(input.ClientId!.Value, on, entry);
                break;
            case UnitStepKind.Found:
                unit.Find(on, salonId, entry);
                break;
            case UnitStepKind.Lost when loan is not null:
                loan.BringBack(on);
                unit.LeaveService(UnitState.Lost, on, input.Note ?? "", entry);
                break;
            case UnitStepKind.Retired:
                unit.LeaveService(UnitState.Retired, on, input.Note ?? "", entry, input.ToEndLook(entry.By));
                break;
            default:
                unit.LeaveService(EndAfter(input.Step), on, input.Note ?? "", entry);
                break;
        }
    }

    private static UnitCleaning CleaningAfter(UnitStepKind step) =>
        step switch
        {
            UnitStepKind.Cleaned => UnitCleaning.Clean,
            UnitStepKind.LeftToDry => UnitCleaning.Drying,
            _ => UnitCleaning.ToBeCleaned,
        };

    /// <exception cref="Refusal">It is no step that is taken here.</exception>
    private static UnitState EndAfter(UnitStepKind step) =>
        step switch
        {
            UnitStepKind.KeptAsSpare => UnitState.EmergencySpare,
            UnitStepKind.Lost => UnitState.Lost,
            UnitStepKind.Damaged => UnitState.Damaged,
            UnitStepKind.ReturnedToClient => UnitState.ReturnedToClient,
            UnitStepKind.Cancelled => UnitState.Cancelled,
            _ => throw new Refusal("This is not done here. Open the unit, and look what comes next."),
        };

    private static async Task RequireClientAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        if (await WhoseAsync(db, input.ClientId, cancellation) is null)
            throw new Refusal("This client is not there any more. They may have been merged with another record.");
    }

    private static async Task<UnitOwner?> WhoseAsync(ClinicDb db, Guid? clientId, CancellationToken cancellation) =>
        clientId is null
            ? null
            : await db
                .Clients.Where(c => c.Id == clientId && c.MergedIntoId == null && c.ErasedAt == null)
                .Select(c => new UnitOwner(c.Id, c.Name, c.Code))
                .SingleOrDefaultAsync(cancellation);
}

/// <summary>Whose a unit is, or who has it for a time.</summary>
public sealed record UnitOwner(Guid Id, string Name, string Code);
