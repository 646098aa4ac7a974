using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;

namespace HairClinic.Web.Features.Visits;

/// <summary>A booked visit goes to another time, chair or person; its length stays as it was agreed.</summary>
public sealed class MoveVisit(
    ClinicDbFactory databases,
    WriteOnce writes,
    CurrentActor current,
    SlotSearch slots,
    IClock clock,
    IStringLocalizer<Words> words
)
{
    /// <returns>Nothing when there is no such visit in the person's salons.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var found = await db
            .Visits.AsNoTracking()
            .Where(v => v.Id == visitId && current.Person.Salons.Contains(v.SalonId))
            .Select(v => new
            {
                Visit = v,
                v.Segments,
                Salon = db.Salons.First(s => s.Id == v.SalonId),
                Client = db.Clients.First(c => c.Id == v.ClientId).Name,
                Service = db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Name,
                Due = db
                    .Bonds.Where(b => b.ClientId == v.ClientId && b.RemovedOn == null)
                    .Select(b => new DueView(b.OpensOn, b.DueOn, b.ClosesOn))
                    .FirstOrDefault(),
            })
            .SingleOrDefaultAsync(cancellation);
        if (found is null)
            return null;
        var chairs = await db
            .Chairs.Where(c => c.SalonId == found.Salon.Id && !c.Retired)
            .OrderBy(c => c.Position)
            .Select(c => new Choice(c.Id, c.Name))
            .ToListAsync(cancellation);
        var people = await db
            .People.Where(p => !p.Left && p.Skills.Any() && p.Salons.Any(s => s.SalonId == found.Salon.Id))
            .OrderBy(p => p.Name)
            .Select(p => new Choice(p.Id, p.Name))
            .ToListAsync(cancellation);
        var visit = found.Visit;
        return new Screen(
            visit.Id,
            visit.Version,
            visit.State,
            found.Client,
            found.Service,
            visit.ServiceKindId,
            found.Salon.Id,
            found.Salon.TimeZone,
            found.Salon.DayOf(clock.GetCurrentInstant()),
            visit.Day,
            visit.StartsAt,
            visit.EndsAt,
            visit.ChairId,
            visit.PersonId,
            [.. Steps(visit).Select(s => new ServiceSegment(s.Kind, s.Minutes))],
            people,
            chairs
        )
        {
            ClientId = visit.ClientId,
            Due = found.Due,
        };
    }

    public Task<IReadOnlyList<SlotOffer>> FindSlotsAsync(SlotRequest ask, CancellationToken cancellation) =>
        slots.FindAsync(ask, cancellation);

    /// <exception cref="Refusal">It is over or called off, or the place is not to be had.</exception>
    /// <exception cref="OvertakenException">Somebody changed the visit since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        (CheckedPlacement Place, Visit Visit)? read = null;
        try
        {
            var moved = await SlotSaveErrors.RetryOnDeadlockAsync(() =>
                writes.RunAsync(
                    key,
                    nameof(MoveVisit),
                    input,
                    async db => Write(db, input, (read = await ReadAsync(db, input, cancellation)).Value),
                    cancellation
                )
            );
            return new Outcome { Moved = moved };
        }
        catch (DoubtedException e)
        {
            return new Outcome { Doubts = e.Doubts };
        }
        catch (Exception e) when (read is not null && SlotSaveErrors.FindClash(e) is { } clash)
        {
            return new Outcome { Taken = await TakenAsync(clash, read.Value.Place, read.Value.Visit, cancellation) };
        }
    }

    private async Task<(CheckedPlacement, Visit)> ReadAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var visit =
            await db
                .Visits.Include(v => v.Segments)
                .SingleOrDefaultAsync(v => v.Id == input.VisitId && current.Person.Salons.Contains(v.SalonId), cancellation)
            ?? throw new Refusal("This visit is not in the book.");
        WriteOnce.ExpectVersion(db, visit, input.Version);
        var minutes = (int)(visit.EndsAt - visit.StartsAt).TotalMinutes;
        return (
            await CheckedPlacement.CheckAsync(
                db,
                visit.SalonId,
                visit.ServiceKindId,
                visit.ClientId,
                input,
                minutes,
                current.Person,
                clock.GetCurrentInstant(),
                cancellation
            ),
            visit
        );
    }

    private Moved Write(ClinicDb db, Input input, (CheckedPlacement Place, Visit Visit) read)
    {
        var (place, visit) = read;
        if (place.Doubts.Count > 0 && !input.DespiteDoubts)
            throw new DoubtedException(place.Doubts);
        var steps = Steps(visit);
        visit.PutAt(steps, place.StartsAt, input.ChairId, input.PersonId, place.Salon, [.. steps.Select(_ => Guid.CreateVersion7())]);
        db.AddRange(visit.Segments);
        visit.SetNote(place.NoteWithDoubts(visit.Note, words));
        return new Moved(visit.Id, visit.Day, visit.StartsAt, visit.EndsAt, place.Salon.Zone, place.Chair, place.Person);
    }

    private async Task<BookingConflict> TakenAsync(SlotClash clash, CheckedPlacement place, Visit visit, CancellationToken cancellation)
    {
        var nearest = await NearestAsync(place, visit, cancellation);
        if (
            clash != SlotClash.Client
            || await slots.FindClientClashAsync(visit.ClientId, place.StartsAt, place.EndsAt, visit.Id, cancellation) is not { } found
        )
            return new BookingConflict(clash, nearest);
        await using var db = databases.Open();
        var name = await db.Clients.Where(c => c.Id == visit.ClientId).Select(c => c.Name).SingleAsync(cancellation);
        return new BookingConflict(clash, nearest) { Client = found.ToRefusal(name) };
    }

    private Task<IReadOnlyList<SlotOffer>> NearestAsync(CheckedPlacement place, Visit visit, CancellationToken cancellation) =>
        slots.FindAsync(
            new SlotRequest(
                place.Salon.Id,
                place.Salon.TimeZone,
                place.Service.Id,
                [.. Steps(visit).Select(s => new ServiceSegment(s.Kind, s.Minutes))],
                place.Salon.DayOf(place.StartsAt),
                WithinDays: 7
            )
            {
                ClientId = visit.ClientId,
                Start = place.StartsAt,
                UsualPerson = visit.PersonId,
                ButVisit = visit.Id,
            },
            cancellation
        );

    // A visit of an old book has no steps: its whole length is one.
    private static List<(SegmentKind Kind, int Minutes)> Steps(Visit visit) =>
        visit.Segments.Count == 0
            ? [(SegmentKind.HandsOn, (int)(visit.EndsAt - visit.StartsAt).TotalMinutes)]
            : [.. visit.Segments.OrderBy(s => s.Position).Select(s => (s.Kind, (int)(s.EndsAt - s.StartsAt).TotalMinutes))];

    public sealed record Screen(
        Guid VisitId,
        uint Version,
        VisitState State,
        string Client,
        string Service,
        Guid ServiceKindId,
        Guid SalonId,
        DateTimeZone Zone,
        LocalDate Today,
        LocalDate Day,
        Instant StartsAt,
        Instant EndsAt,
        Guid? ChairId,
        Guid? PersonId,
        IReadOnlyList<ServiceSegment> Steps,
        IReadOnlyList<Choice> People,
        IReadOnlyList<Choice> Chairs
    )
    {
        public Guid ClientId { get; init; }

        /// <summary>Of the bond on the head; null where there is none.</summary>
        public DueView? Due { get; init; }

        /// <summary>Whether it can be moved at all.</summary>
        public bool IsOpen => State is VisitState.Booked or VisitState.Arrived;
    }

    public sealed record DueView(LocalDate Opens, LocalDate DueOn, LocalDate Closes);

    public sealed record Input : PlacementInput
    {
        public Guid VisitId { get; set; }
        public uint Version { get; set; }
    }

    /// <summary>Exactly one of the three.</summary>
    public sealed record Outcome
    {
        public Moved? Moved { get; init; }
        public BookingConflict? Taken { get; init; }
        public IReadOnlyList<Doubt> Doubts { get; init; } = [];
    }

    public sealed record Moved(Guid VisitId, LocalDate Day, Instant StartsAt, Instant EndsAt, string Zone, string Chair, string Person);
}
