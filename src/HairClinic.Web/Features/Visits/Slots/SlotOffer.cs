using HairClinic.Domain.Chairs;
using HairClinic.Web.Data.Books;
using NodaTime;

namespace HairClinic.Web.Features.Visits;

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
    public static IReadOnlyList<SlotOffer> Of(SlotFacts book, IEnumerable<Slot> slots) => [.. slots.Select(slot => Of(book, slot))];

    private static SlotOffer Of(SlotFacts book, Slot slot)
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
