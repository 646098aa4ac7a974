using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Wear;

/// <summary>The next few free times to offer someone on the due list: near their due day, or as soon as can be when it has passed.</summary>
public sealed class OfferSlots(ClinicDbFactory databases, IClock clock)
{
    private const int Best = 3;
    private const int DaysAround = 7;

    /// <returns>Empty when nothing is free, when no rebond is offered, or when the client is not theirs.</returns>
    public async Task<IReadOnlyList<Offer>> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.Open();
        var facts = await db
            .Clients.AsNoTracking()
            .Where(c => c.Id == clientId)
            .Select(c => new
            {
                c.HomeSalonId,
                Zone = db.Salons.First(s => s.Id == c.HomeSalonId).Zone,
                Due = db
                    .Bonds.Where(b => b.ClientId == c.Id && b.RemovedOn == null)
                    .Select(b => new { b.DueOn, Lifted = b.Lift != null })
                    .FirstOrDefault(),
                Usual = db
                    .Visits.Where(v => v.ClientId == c.Id && v.State == VisitState.Done)
                    .OrderByDescending(v => v.StartsAt)
                    .Select(v => v.PersonId)
                    .FirstOrDefault(),
                Service = db
                    .ServiceKinds.Where(s => s.Purpose == ServicePurpose.Rebond && !s.Retired)
                    .OrderBy(s => s.Steps.Sum(step => step.Minutes))
                    .Select(s => new
                    {
                        s.Id,
                        Steps = s.Steps.OrderBy(step => step.Position).Select(step => new { step.Kind, step.Minutes }).ToList(),
                    })
                    .FirstOrDefault(),
            })
            .SingleOrDefaultAsync(cancellation);
        if (facts?.Service is null)
            return [];

        var zone = DateTimeZoneProviders.Tzdb[facts.Zone];
        var today = now.InZone(zone).Date;
        var day = facts.Due is { Lifted: false } due ? LocalDate.Max(due.DueOn, today) : today;
        var from = Instant.Max(now, zone.AtStartOfDay(day.PlusDays(-DaysAround)).ToInstant());
        var to = zone.AtStartOfDay(day.PlusDays(DaysAround + 1)).ToInstant();
        var target = Instant.Max(now, (day + LocalTime.Noon).InZoneLeniently(zone).ToInstant());
        await using var wide = databases.OpenPracticeWide(nameof(OfferSlots));
        var book = await SlotFacts.LoadAsync(wide, facts.HomeSalonId, new Interval(from, to), clientId, cancellation);
        ServiceSegment[] steps = [.. facts.Service.Steps.Select(s => new ServiceSegment(s.Kind, s.Minutes))];
        var slots = book.FindAcrossHalfDays(
            new SlotCriteria(new ServiceTimeline(steps), facts.Service.Id, target) { UsualPerson = facts.Usual, Best = Best }
        );
        return
        [
            .. slots
                .OrderBy(s => s.StartsAt)
                .Select(s => new Offer(
                    s.StartsAt.InZone(zone).LocalDateTime,
                    book.People.First(p => p.Id == s.PersonId).Name,
                    $"/visits/book-visit?client={clientId}&service={facts.Service.Id}&chair={s.ChairId}&start={NodaTime.Text.InstantPattern.General.Format(s.StartsAt)}"
                )),
        ];
    }

    /// <param name="At">On the salon's clock.</param>
    /// <param name="Href">Where it is booked.</param>
    public sealed record Offer(LocalDateTime At, string Person, string Href);
}
