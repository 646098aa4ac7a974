using HairClinic.Domain.Chairs;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;
using NodaTime;

namespace HairClinic.Web.Features.Visits.Slots;

/// <summary>Free slots for booking and moving alike.</summary>
public sealed class SlotSearch(ClinicDbFactory databases, IClock clock)
{
    /// <summary>Slots are never offered before now.</summary>
    public async Task<IReadOnlyList<SlotOffer>> FindAsync(SlotAsk ask, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var around = LocalDate.Max(ask.Around, now.InZone(ask.Zone).Date);
        var from = Instant.Max(now, ask.Zone.AtStartOfDay(around.PlusDays(-ask.WithinDays)).ToInstant());
        var to = ask.Zone.AtStartOfDay(around.PlusDays(ask.WithinDays + 1)).ToInstant();
        await using var db = databases.OpenPracticeWide(nameof(SlotSearch));
        var book = await SlotBook.LoadAsync(db, ask.SalonId, new Interval(from, to), cancellation, ask.ButVisit);
        var target = ask.Start ?? (around + LocalTime.Noon).InZoneLeniently(ask.Zone).ToInstant();
        var wish = new SlotWish(new ServiceTimeline(ask.Steps), ask.ServiceKindId, target)
        {
            OnlyPerson = ask.OnlyPerson,
            UsualPerson = ask.UsualPerson,
            OnlyChair = ask.OnlyChair,
        };
        return SlotOffer.Of(book, ask.Start is null ? book.Spread(wish) : book.Nearest(wish));
    }
}
