using HairClinic.Domain.Chairs;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using NodaTime;

namespace HairClinic.Web.Features.Visits;

/// <summary>Free slots for booking and moving alike.</summary>
public sealed class SlotSearch(ClinicDbFactory databases, IClock clock)
{
    /// <summary>In the order of time; from a gap that was tapped, the nearest first. Never before now.</summary>
    public async Task<IReadOnlyList<SlotOffer>> FindAsync(SlotAsk ask, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var around = LocalDate.Max(ask.Around, now.InZone(ask.Zone).Date);
        var from = Instant.Max(now, ask.Zone.AtStartOfDay(around.PlusDays(-ask.WithinDays)).ToInstant());
        var to = ask.Zone.AtStartOfDay(around.PlusDays(ask.WithinDays + 1)).ToInstant();
        await using var db = databases.OpenPracticeWide(nameof(SlotSearch));
        var book = await SlotFacts.LoadAsync(db, ask.SalonId, new Interval(from, to), ask.ClientId, cancellation, ask.ButVisit);
        var target = ask.Start ?? (around + LocalTime.Noon).InZoneLeniently(ask.Zone).ToInstant();
        var wish = new SlotWish(new ServiceTimeline(ask.Steps), ask.ServiceKindId, target)
        {
            OnlyPerson = ask.OnlyPerson,
            UsualPerson = ask.UsualPerson,
            OnlyChair = ask.OnlyChair,
        };
        return SlotOffer.Of(book, ask.Start is null ? book.Spread(wish).OrderBy(s => s.StartsAt) : book.Nearest(wish));
    }

    /// <summary>Whether a client has another visit at that time, wherever that is: who asks learns no more of it than they may see.</summary>
    public async Task<ClientClash?> ClashAsync(Guid clientId, Instant from, Instant to, Guid? butVisit, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await ClientVisit.InTheWayAsync(db, clientId, from, to, butVisit, cancellation) is { } seen)
            return new(seen);
        await using var wide = databases.OpenPracticeWide(nameof(SlotSearch));
        return await ClientVisit.InTheWayAsync(wide, clientId, from, to, butVisit, cancellation) is null ? null : new(Visit: null);
    }
}
