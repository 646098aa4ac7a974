using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Clients;

/// <summary>
/// A client needs no units any more: orders and letters stop with this save, visits ahead are called off or kept, and it is said what
/// becomes of each unit. Or they are back.
/// </summary>
public sealed partial class EndNeed(
    ClinicDbFactory databases,
    WriteOnce writes,
    CurrentActor current,
    IClock clock,
    IStringLocalizer<Words> words
)
{
    /// <returns>Null: not there, or not of a salon of theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db
            .Clients.AsNoTracking()
            .UnmergedById(clientId)
            .Where(c => c.ErasedAt == null)
            .AtHomeInSalonsOf(current.Person)
            .SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        var now = clock.GetCurrentInstant();
        var today = clock.Today(await db.RequireZoneAsync(client.Id, cancellation));
        var units = await (
            from unit in db.HairSystems.AsNoTracking()
            where unit.ClientId == clientId
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            orderby unit.Serial
            select new UnitLine(unit.Id, unit.Serial, kind.Name, unit.State)
        ).ToListAsync(cancellation);
        return new Screen(client.Name, client.Code, today)
        {
            Ended = client.LeftOn,
            Because = client.NeedEndedBecause,
            Units = [.. units.Where(u => !u.State.IsGone())],
            Visits = await (
                from visit in Ahead(db, clientId, now)
                join service in db.ServiceKinds on visit.ServiceKindId equals service.Id
                join salon in db.Salons on visit.SalonId equals salon.Id
                orderby visit.StartsAt
                select new VisitLine(visit.StartsAt, salon.Zone, salon.Name, service.Name)
            ).ToListAsync(cancellation),
            Borrowed = await Borrowed(db, clientId).Select(u => new UnitLink(u.Id, u.Serial)).ToListAsync(cancellation),
            WearsBond = await db.Bonds.AnyAsync(b => b.ClientId == clientId && b.RemovedOn == null, cancellation),
            VisitToday = await db
                .Visits.Where(v => v.ClientId == clientId && v.Day == today)
                .Where(v => v.State == VisitState.Booked || v.State == VisitState.Arrived || v.State == VisitState.InChair)
                .OrderBy(v => v.StartsAt)
                .Select(v => (Guid?)v.Id)
                .FirstOrDefaultAsync(cancellation),
            TrainingAgreed = await IsTrainingAgreedAsync(db, clientId, now, cancellation),
            Start = new Input
            {
                ClientId = clientId,
                Version = client.Version,
                On = today,
                Units = [.. units.Where(u => u.IsAsked).Select(u => new UnitInput { UnitId = u.Id })],
            },
        };
    }

    /// <exception cref="Refusal">Something is on their head or lent to them, a day cannot be, or a unit cannot end so.</exception>
    /// <exception cref="OvertakenException">Somebody changed the client, a unit or a visit at the same moment.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(EndNeed), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var client = await RequireAsync(db, input.ClientId, input.Version, cancellation);
        var now = clock.GetCurrentInstant();
        var today = clock.Today(await db.RequireZoneAsync(client.Id, cancellation));
        var bonds = await db
            .Bonds.Where(b => b.ClientId == client.Id)
            .Select(b => new { b.HairSystemId, b.RemovedOn })
            .ToListAsync(cancellation);
        client.EndNeed(
            input.On!.Value,
            input.Because!.Value,
            new NeedEndFacts(
                today,
                bonds.Exists(b => b.RemovedOn is null),
                bonds.Max(b => b.RemovedOn),
                await Borrowed(db, client.Id).Select(u => u.Serial).FirstOrDefaultAsync(cancellation)
            )
        );

        if (bonds.Exists(b => b.RemovedOn is null))
            await LeaveOnHeadAsync(db, client.Id, input.On.Value, (today, now), cancellation);
        var agreed = await IsTrainingAgreedAsync(db, client.Id, now, cancellation);
        var units = await db
            .HairSystems.Include(u => u.Promises)
            .Include(u => u.Arrivals)
            .Include(u => u.Repairs)
            .Where(u => u.ClientId == client.Id)
            .OrderBy(u => u.Serial)
            .ToListAsync(cancellation);
        var calledOff = new List<Guid>();
        foreach (var unit in units.Where(u => !u.State.IsGone()))
        {
            var after = input.Units.Find(u => u.UnitId == unit.Id)?.After;
            var entry = new UnitStepEntry(
                Guid.CreateVersion7(),
                today,
                now,
                current.Actor.Id,
                bonds.Where(b => b.HairSystemId == unit.Id).Max(b => b.RemovedOn)
            );
            var wasOrdered = unit.State.IsInFlight();
            unit.EndNeed(after, input.Because.Value, agreed, Why(after), today, entry);
            if (wasOrdered && unit.State == UnitState.Cancelled)
                calledOff.Add(unit.Id);
        }

        var visits = await Ahead(db, client.Id, now).Include(v => v.Segments).ToListAsync(cancellation);
        if (visits.Count > 0)
            CallOff(visits, input.CallOffVisits);
        return new Outcome(
            input.On.Value,
            input.Because.Value,
            input.CallOffVisits == true ? visits.Count : 0,
            await TellWorkshopsAsync(db, calledOff, cancellation)
        );
    }

    // What somebody who died wears is not seen again.
    private async Task LeaveOnHeadAsync(
        ClinicDb db,
        Guid clientId,
        LocalDate on,
        (LocalDate Today, Instant Now) at,
        CancellationToken cancellation
    )
    {
        foreach (var bond in await db.Bonds.Where(b => b.ClientId == clientId && b.RemovedOn == null).ToListAsync(cancellation))
        {
            bond.Remove(on, RemovalReason.NotSeenAgain);
            var unit = await db.HairSystems.SingleAsync(u => u.Id == bond.HairSystemId, cancellation);
            var entry = new UnitStepEntry(Guid.CreateVersion7(), at.Today, at.Now, current.Actor.Id);
            unit.StayWithWearer(Why(UnitAfterNeed.GivenBack), at.Today, entry);
        }
    }

    private void CallOff(List<Visit> visits, bool? calledOff)
    {
        if (calledOff is null)
            throw new Refusal("Say what becomes of the visits ahead.") { Field = nameof(Input.CallOffVisits) };
        if (calledOff == false)
            return;
        foreach (var visit in visits)
        {
            visit.Cancel();
            visit.SetNote(visit.Note.WithLine(words["Called off by the salon."]));
        }
    }

    // What stands in a unit's trail says nothing of why the need ended.
    private string Why(UnitAfterNeed? after) =>
        after switch
        {
            UnitAfterNeed.GivenForTraining => words["given for training"],
            UnitAfterNeed.Destroyed => words["destroyed"],
            _ => words["needs no more units"],
        };

    private static IQueryable<Visit> Ahead(ClinicDb db, Guid clientId, Instant now) =>
        db.Visits.Where(v => v.ClientId == clientId && v.EndsAt > now && (v.State == VisitState.Booked || v.State == VisitState.Arrived));

    private static IQueryable<HairSystem> Borrowed(ClinicDb db, Guid clientId) =>
        from loan in db.UnitLoans
        where loan.ClientId == clientId && loan.BackOn == null
        join unit in db.HairSystems on loan.HairSystemId equals unit.Id
        orderby unit.Serial
        select unit;

    private static async Task<bool> IsTrainingAgreedAsync(ClinicDb db, Guid clientId, Instant now, CancellationToken cancellation) =>
        ConsentValidityRule.FindConsent(
            (await ConsentStore.LedgerAsync(db, clientId, cancellation)).Select(l => l.Consent),
            ConsentSubject.Training,
            now
        )
            is not null;

    private static async Task<IReadOnlyList<ToTell>> TellWorkshopsAsync(ClinicDb db, List<Guid> units, CancellationToken cancellation) =>
        units.Count == 0
            ? []
            : await (
                from unit in db.HairSystems
                where units.Contains(unit.Id)
                join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
                join workshop in db.Workshops on kind.WorkshopId equals workshop.Id into made
                from workshop in made.DefaultIfEmpty()
                orderby unit.Serial
                select new ToTell(unit.Serial, workshop == null ? null : workshop.Name)
            ).ToListAsync(cancellation);

    private async Task<Client> RequireAsync(ClinicDb db, Guid clientId, uint version, CancellationToken cancellation)
    {
        var client =
            await db
                .Clients.UnmergedById(clientId)
                .Where(c => c.ErasedAt == null)
                .AtHomeInSalonsOf(current.Person)
                .SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This client is not there any more. They may have been merged with another record.");
        WriteOnce.ExpectVersion(db, client, version);
        return client;
    }
}
