using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Visits;

/// <summary>Free slots for booking and moving alike.</summary>
public sealed class SlotSearch(ClinicDbFactory databases, IClock clock)
{
    /// <summary>In the order of time; from a gap that was tapped, the nearest first. Never before now.</summary>
    public async Task<IReadOnlyList<SlotOffer>> FindAsync(SlotRequest ask, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var around = LocalDate.Max(ask.Around, now.InZone(ask.Zone).Date);
        var from = Instant.Max(now, ask.Zone.AtStartOfDay(around.PlusDays(-ask.WithinDays)).ToInstant());
        var to = ask.Zone.AtStartOfDay(around.PlusDays(ask.WithinDays + 1)).ToInstant();
        await using var db = databases.OpenPracticeWide(nameof(SlotSearch));
        var book = await SlotFacts.LoadAsync(db, ask.SalonId, new Interval(from, to), ask.ClientId, cancellation, ask.ButVisit);
        var target = ask.Start ?? (around + LocalTime.Noon).InZoneLeniently(ask.Zone).ToInstant();
        var wish = new SlotCriteria(new ServiceTimeline(ask.Steps), ask.ServiceKindId, target)
        {
            OnlyPerson = ask.OnlyPerson,
            UsualPerson = ask.UsualPerson,
            OnlyChair = ask.OnlyChair,
        };
        return SlotOffer.For(book, ask.Start is null ? book.FindAcrossHalfDays(wish).OrderBy(s => s.StartsAt) : book.Nearest(wish));
    }

    /// <summary>Whether a client has another visit at that time, wherever that is: who asks learns no more of it than they may see.</summary>
    public async Task<ClientClash?> FindClientClashAsync(
        Guid clientId,
        Instant from,
        Instant to,
        Guid? butVisit,
        CancellationToken cancellation
    )
    {
        await using var db = databases.Open();
        if (await ClashingVisit.FindFirstAsync(db, clientId, from, to, butVisit, cancellation) is { } seen)
            return new(seen);
        await using var wide = databases.OpenPracticeWide(nameof(SlotSearch));
        return await ClashingVisit.FindFirstAsync(wide, clientId, from, to, butVisit, cancellation) is null ? null : new(Visit: null);
    }
}

/// <summary>The client has another visit at the time that is wanted.</summary>
/// <param name="Visit">Null for whoever may not see it: to them the client is busy elsewhere.</param>
public sealed record ClientClash(ClashingVisit? Visit)
{
    /// <param name="name">The client's.</param>
    public Refusal ToRefusal(string name) =>
        Visit switch
        {
            null => new("{0} is busy elsewhere at that time.", name),
            { Chair: { } chair, From: var from, To: var to } => new(
                "{0} is booked {1}, {2}–{3} at {4}, {5}.",
                name,
                from.Date,
                from.TimeOfDay,
                to.TimeOfDay,
                Visit.Salon,
                chair
            ),
            { From: var from, To: var to } => new(
                "{0} is booked {1}, {2}–{3} at {4}.",
                name,
                from.Date,
                from.TimeOfDay,
                to.TimeOfDay,
                Visit.Salon
            ),
        };
}

/// <summary>Which free slots are asked for.</summary>
/// <param name="Around">The day wished for, in the salon's zone.</param>
/// <param name="WithinDays">Days either side of it.</param>
public sealed record SlotRequest(
    Guid SalonId,
    DateTimeZone Zone,
    Guid ServiceKindId,
    IReadOnlyList<ServiceSegment> Steps,
    LocalDate Around,
    int WithinDays
)
{
    /// <summary>Who comes; starts at which they have another visit are not offered.</summary>
    public Guid? ClientId { get; init; }

    public Guid? OnlyPerson { get; init; }
    public Guid? UsualPerson { get; init; }

    /// <summary>A gap that was tapped: this chair, as near to <see cref="Start"/> as can be.</summary>
    public Guid? OnlyChair { get; init; }

    public Instant? Start { get; init; }

    /// <summary>The visit that is to be moved.</summary>
    public Guid? ButVisit { get; init; }
}

/// <summary>A free slot as it is shown and tapped.</summary>
/// <param name="StartsOn">The civil day in the salon's zone.</param>
public sealed record SlotOffer(
    Instant StartsAt,
    LocalDate StartsOn,
    LocalTime From,
    LocalTime To,
    Guid ChairId,
    string Chair,
    Guid PersonId,
    string Person
)
{
    public static IReadOnlyList<SlotOffer> For(SlotFacts book, IEnumerable<Slot> slots) => [.. slots.Select(slot => For(book, slot))];

    private static SlotOffer For(SlotFacts book, Slot slot)
    {
        var zone = book.Salon.TimeZone;
        var start = slot.StartsAt.InZone(zone).LocalDateTime;
        return new(
            slot.StartsAt,
            start.Date,
            start.TimeOfDay,
            slot.EndsAt.InZone(zone).TimeOfDay,
            slot.ChairId,
            book.Chairs.Single(c => c.Id == slot.ChairId).Name,
            slot.PersonId,
            book.People.Single(p => p.Id == slot.PersonId).Name
        );
    }
}
