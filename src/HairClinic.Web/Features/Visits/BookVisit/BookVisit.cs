using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;

namespace HairClinic.Web.Features.Visits;

/// <summary>A visit is booked: who, what, and one tap on a free slot. The database decides who was first.</summary>
public sealed partial class BookVisit(
    ClinicDbFactory databases,
    WriteOnce writes,
    CurrentActor current,
    SlotSearch slots,
    IClock clock,
    IStringLocalizer<Words> words
)
{
    /// <exception cref="Refusal">The clocks skip that time, or client, service, chair or person are not to be had.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        if (!current.Person.Salons.Contains(input.SalonId))
            throw new Refusal("You do not work in this salon.");
        CheckedPlacement? place = null;
        try
        {
            var booked = await SlotSaveErrors.RetryOnDeadlockAsync(() =>
                writes.RunAsync(
                    key,
                    nameof(BookVisit),
                    input,
                    async db => await WriteAsync(db, input, place = await ReadAsync(db, input, cancellation), cancellation),
                    cancellation
                )
            );
            return new Outcome { Booked = booked };
        }
        catch (DoubtedException e)
        {
            return new Outcome { Doubts = e.Doubts };
        }
        catch (Exception e) when (place is not null && SlotSaveErrors.FindClash(e) is { } clash)
        {
            return new Outcome { Taken = await TakenAsync(clash, place, input, cancellation) };
        }
    }

    private Task<CheckedPlacement> ReadAsync(ClinicDb db, Input input, CancellationToken cancellation) =>
        CheckedPlacement.CheckAsync(
            db,
            input.SalonId,
            input.ServiceKindId,
            input.ClientId,
            input,
            minutes: null,
            current.Person,
            clock.GetCurrentInstant(),
            cancellation
        );

    private async Task<Booked> WriteAsync(ClinicDb db, Input input, CheckedPlacement place, CancellationToken cancellation)
    {
        var client =
            await db
                .Clients.Where(c => c.Id == input.ClientId && c.MergedIntoId == null)
                .Select(c => new { c.Name, c.LeftOn })
                .SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This client is not in the book any more. Look them up again.");
        Client.RequireNeed(client.LeftOn);
        if (place.Doubts.Count > 0 && !input.DespiteDoubts)
            throw new DoubtedException(place.Doubts);
        var visit = new Visit(Guid.CreateVersion7(), input.ClientId, place.Salon.Id, place.Service.Id);
        visit.PutAt(
            place.Service,
            place.StartsAt,
            input.ChairId,
            input.PersonId,
            place.Salon,
            [.. place.Service.Steps.Select(_ => Guid.CreateVersion7())]
        );
        visit.SetNote(place.NoteWithDoubts(input.Note, words));
        db.Visits.Add(visit);
        return new Booked(
            visit.Id,
            client.Name,
            place.Service.Name,
            visit.Day,
            visit.StartsAt,
            visit.EndsAt,
            place.Salon.Zone,
            place.Chair,
            place.Person
        );
    }

    private async Task<BookingConflict> TakenAsync(SlotClash clash, CheckedPlacement place, Input input, CancellationToken cancellation) =>
        new(clash, await NearestAsync(place, input, cancellation))
        {
            Client =
                clash == SlotClash.Client
                    ? await DescribeClientClashAsync(input.ClientId, place.StartsAt, place.EndsAt, cancellation)
                    : null,
        };

    private Task<IReadOnlyList<SlotOffer>> NearestAsync(CheckedPlacement place, Input input, CancellationToken cancellation) =>
        slots.FindAsync(
            new SlotRequest(
                place.Salon.Id,
                place.Salon.TimeZone,
                input.ServiceKindId,
                Steps(place.Service.Steps),
                place.Salon.DayOf(place.StartsAt),
                WithinDays: 7
            )
            {
                ClientId = input.ClientId,
                Start = place.StartsAt,
                UsualPerson = input.PersonId,
            },
            cancellation
        );

    public sealed record Input : PlacementInput
    {
        public Guid SalonId { get; set; }
        public Guid ClientId { get; set; }
        public Guid ServiceKindId { get; set; }
        public string? Note { get; set; }
    }

    /// <summary>Exactly one of the three.</summary>
    public sealed record Outcome
    {
        public Booked? Booked { get; init; }
        public BookingConflict? Taken { get; init; }
        public IReadOnlyList<Doubt> Doubts { get; init; } = [];
    }

    public sealed record Booked(
        Guid VisitId,
        string Client,
        string Service,
        LocalDate Day,
        Instant StartsAt,
        Instant EndsAt,
        string Zone,
        string Chair,
        string Person
    );
}
