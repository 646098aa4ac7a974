using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>Starts a visit now, without a booking: a free chair of this salon from this minute on.</summary>
public sealed partial class WalkIn(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var services = await db.ServiceKinds.AsNoTracking().Include(s => s.Steps).Where(s => !s.Retired).ToListAsync(cancellation);
        return new Screen([
            .. services
                .OrderBy(s => s.Purpose != ServicePurpose.Rebond)
                .ThenBy(s => s.Minutes)
                .Select(s => new ServiceChoice(s.Id, s.Name, s.Minutes)),
        ]);
    }

    /// <exception cref="Refusal">No chair is free, the client has a visit today already, or the service is blocked for them.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return new(
                await SlotSaveErrors.RetryOnDeadlockAsync(() =>
                    writes.RunAsync(key, nameof(WalkIn), input, db => WriteAsync(db, input, cancellation), cancellation)
                )
            );
        }
        catch (DoubtedException)
        {
            return new(Begun: null);
        }
        catch (DbUpdateException e) when (SlotSaveErrors.FindClash(e) is SlotClash.Client)
        {
            throw await ElsewhereAsync(input, cancellation);
        }
        catch (DbUpdateException e) when (SlotSaveErrors.FindClash(e) is not null)
        {
            throw new Refusal("The chair was taken a moment ago. Try once more.");
        }
    }

    private async Task<Begun> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var me = current.Person;
        var salonId = me.AtSalon ?? (me.Salons is [var first, ..] ? first : Guid.Empty);
        var salon = await db.Salons.SingleOrDefaultAsync(s => s.Id == salonId, cancellation) ?? throw new Refusal("Choose a salon first.");
        var service = await db.ServiceKinds.Include(s => s.Steps).SingleAsync(s => s.Id == input.ServiceKindId, cancellation);
        var start = Instant.FromUnixTimeSeconds(clock.GetCurrentInstant().ToUnixTimeSeconds() / 60 * 60);
        var end = start + Duration.FromMinutes(service.Minutes);
        var today = salon.DayOf(start);
        var booked = await db
            .Visits.Where(v => v.ClientId == input.ClientId && v.Day == today)
            .Where(v => v.State == VisitState.Booked || v.State == VisitState.Arrived || v.State == VisitState.InChair)
            .Select(v => (Instant?)v.StartsAt)
            .FirstOrDefaultAsync(cancellation);
        if (booked is { } at)
            throw new Refusal(
                "This client has a visit today already, at {0}. Begin that one.",
                at.InZone(salon.TimeZone).ToString("HH:mm", null)
            );
        var concerning = ClearanceStore.OfPurposeOnDay(db, service.Purpose, today);
        // Who may not open a client would read no clearance either.
        var asked =
            await db
                .Clients.Where(c => c.Id == input.ClientId && c.MergedIntoId == null && c.LeftOn == null)
                .Select(c => new
                {
                    Clearances = concerning.Where(x => x.ClientId == c.Id).Select(x => x.Kind).ToList(),
                    Events = db.LifeEvents.Where(e => e.ClientId == c.Id).ToList(),
                    DaysBeforeEvent = db.PracticeSettings.Select(p => p.DaysBeforeEvent).First(),
                })
                .SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This client is not in the book any more. Look them up again.");
        var pause = BondingPause.On(asked.Events, service.Purpose, today, asked.DaysBeforeEvent);
        var doubts = ClearanceGate.CheckBooking(asked.Clearances, pause, me);
        if (VisitLogRoutes.IsBondingPurpose(service.Purpose) && await AsksToWaitAsync(db, input.ClientId, today, cancellation))
            doubts = [.. doubts, Doubt.NoBondYet];
        if (doubts.Count > 0 && !input.Looked)
            throw new DoubtedException(doubts);

        var chair =
            await FreeChairAsync(db, salonId, service, start, cancellation)
            ?? throw new Refusal("No chair is free for the next {0} minutes. Book a later time instead.", service.Minutes);
        var handsBusy = await db.VisitSegments.AnyAsync(
            s => s.PersonId == me.PersonId && s.HoldsHands && s.StartsAt < end && s.EndsAt > start,
            cancellation
        );
        var visit = new Visit(Guid.CreateVersion7(), input.ClientId, salonId, service.Id);
        visit.PutAt(service, start, chair.Id, handsBusy ? null : me.PersonId, salon, [.. service.Steps.Select(_ => Guid.CreateVersion7())]);
        if (asked.Clearances.Contains(ClearanceSeverity.Block))
            visit.SetNote(ClearanceGate.AppendSetAsideLine(note: null));
        visit.Begin(today);
        db.Visits.Add(visit);
        return new Begun(visit.Id, chair.Name, handsBusy);
    }

    private static async Task<bool> AsksToWaitAsync(ClinicDb db, Guid clientId, LocalDate today, CancellationToken cancellation) =>
        (await LastBondQuery.OfClient(db, clientId).FirstOrDefaultAsync(cancellation))?.AsksToWaitOn(today) == true;

    // As the search and the database have it: a chair may be free while somebody waits elsewhere.
    private static async Task<Chair?> FreeChairAsync(
        ClinicDb db,
        Guid salonId,
        ServiceKind service,
        Instant start,
        CancellationToken cancellation
    )
    {
        var timeline = new ServiceTimeline([.. service.Steps.OrderBy(s => s.Position).Select(s => new ServiceSegment(s.Kind, s.Minutes))]);
        var end = start + timeline.Length;
        var chairs = await db
            .Chairs.Where(c => c.SalonId == salonId && !c.Retired)
            .OrderBy(c => c.Position)
            .Select(c => new
            {
                Chair = c,
                Busy = db
                    .VisitSegments.Where(s => s.ChairId == c.Id && s.HoldsChair && s.StartsAt < end && s.EndsAt > start)
                    .Select(s => new { s.StartsAt, s.EndsAt })
                    .ToList(),
            })
            .ToListAsync(cancellation);
        return chairs
            .FirstOrDefault(c =>
                !timeline.Chair.Any(block => c.Busy.Any(b => b.StartsAt < start + block.To && b.EndsAt > start + block.From))
            )
            ?.Chair;
    }

    // The client is under way somewhere else: said with place and time to whoever may see that visit.
    private async Task<Refusal> ElsewhereAsync(Input input, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var now = clock.GetCurrentInstant();
        var name = await db.Clients.Where(c => c.Id == input.ClientId).Select(c => c.Name).SingleAsync(cancellation);
        var minutes = (
            await db.ServiceKinds.Include(s => s.Steps).AsNoTracking().SingleAsync(s => s.Id == input.ServiceKindId, cancellation)
        ).Minutes;
        var visit = await ClashingVisit.FindFirstAsync(
            db,
            input.ClientId,
            now - Duration.FromMinutes(1),
            now + Duration.FromMinutes(minutes),
            butVisit: null,
            cancellation
        );
        return new ClientClash(visit).ToRefusal(name);
    }

    public sealed record Screen(IReadOnlyList<ServiceChoice> Services);

    public sealed record ServiceChoice(Guid Id, string Name, int Minutes);

    public sealed record Found(Guid Id, string Name, string Code);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public Guid ServiceKindId { get; set; }

        /// <summary>Something about this client wants a look before this service, and they looked.</summary>
        public bool Looked { get; set; }
    }

    /// <param name="Begun">Null: nothing was begun, somebody has to look first.</param>
    public sealed record Outcome(Begun? Begun);

    /// <param name="HandsBusy">Whoever started it is booked elsewhere in that time, so it holds the chair and nobody's hands.</param>
    public sealed record Begun(Guid VisitId, string Chair, bool HandsBusy);
}
