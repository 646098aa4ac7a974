using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>
/// Free times as clients are offered them: only starts. Chair and hands are chosen here, again at the moment of booking, and the
/// database has the last word.
/// </summary>
public sealed class SelfBookingSlots(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <summary>Days either side of the day wished for.</summary>
    public const int Around = 7;

    private const string Job = "own-slots";
    private const int Offered = 12;

    // Nobody is at the door sooner than this.
    private static readonly Duration Soonest = Duration.FromHours(1);

    /// <summary>What a client may be told of their own bookings; read practice-wide because times of others are counted in.</summary>
    public async Task<SelfBookingFacts?> LoadBookingFactsAsync(CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.OpenPracticeWide(Job);
        return await db
            .Clients.AsNoTracking()
            .Where(c => c.Id == client && c.MergedIntoId == null && c.LeftOn == null)
            .Select(c => new SelfBookingFacts(
                db.Salons.First(s => s.Id == c.HomeSalonId),
                db.Bonds.Where(b => b.ClientId == c.Id && b.RemovedOn == null).Select(b => (LocalDate?)b.DueOn).FirstOrDefault(),
                db.Visits.Where(v => v.ClientId == c.Id && v.State == VisitState.Done)
                    .OrderByDescending(v => v.StartsAt)
                    .Select(v => v.PersonId)
                    .FirstOrDefault(),
                db.PracticeSettings.Select(p => p.ClientMoveHours).First(),
                db.ServiceKinds.Include(k => k.Steps)
                    .Where(k => k.OfferedToClients && !k.Retired && k.Steps.Any())
                    .OrderBy(k => k.Name)
                    .ToList()
            ))
            .SingleOrDefaultAsync(cancellation);
    }

    /// <summary>Their own visit, still to come; nobody else's is found.</summary>
    public async Task<OwnVisit?> FindVisitAsync(ClinicDb db, Guid visitId, CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        var visit = await db
            .Visits.Include(v => v.Segments)
            .SingleOrDefaultAsync(v => v.Id == visitId && v.ClientId == client && v.State == VisitState.Booked, cancellation);
        if (visit is null)
            return null;
        await using var wide = databases.OpenPracticeWide(Job);
        var about = await (
            from kind in wide.ServiceKinds.AsNoTracking()
            where kind.Id == visit.ServiceKindId
            from salon in wide.Salons
            where salon.Id == visit.SalonId
            select new
            {
                Salon = salon,
                kind.Purpose,
                Hours = wide.PracticeSettings.Select(p => p.ClientMoveHours).First(),
            }
        ).SingleAsync(cancellation);
        return new OwnVisit(visit, about.Salon, about.Purpose, about.Hours);
    }

    /// <summary>Whether the salon wants a word with them before this is booked. They are told no more than that.</summary>
    public async Task<bool> MustRingFirstAsync(SelfBookingCriteria wish, LocalDate day, CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        return await ClearanceStore
                .OfPurposeOnDay(db, wish.Purpose, day)
                .AnyAsync(c => c.ClientId == client && c.Kind == ClearanceSeverity.Block, cancellation)
            || await IsPausedAsync(client, wish.Purpose, day, cancellation);
    }

    // Whoever came by an address that is not confirmed reads no events; theirs count all the same.
    private async Task<bool> IsPausedAsync(Guid client, ServicePurpose purpose, LocalDate day, CancellationToken cancellation)
    {
        if (!ClearanceRules.Bonding.Contains(purpose))
            return false;
        await using var db = databases.OpenPracticeWide(Job);
        var found = await db
            .PracticeSettings.AsNoTracking()
            .Select(p => new { p.DaysBeforeEvent, Events = db.LifeEvents.Where(e => e.ClientId == client).ToList() })
            .SingleAsync(cancellation);
        return BondingPause.On(found.Events, day, found.DaysBeforeEvent) is not null;
    }

    /// <exception cref="Refusal">It is too late to change it here.</exception>
    public void RequireChangeable(OwnVisit own)
    {
        if (!own.MayChange(clock.GetCurrentInstant()))
            throw new Refusal("It is less than {0} hours away: to change it, please ring us.", own.MoveHours);
    }

    /// <param name="at">A start wished for: the nearest come first; else times spread over the days around.</param>
    public async Task<IReadOnlyList<FreeStart>> FindAsync(
        SelfBookingCriteria wish,
        LocalDate around,
        Instant? at,
        CancellationToken cancellation
    )
    {
        var book = await LoadAsync(wish, around, cancellation);
        if (book is null)
            return [];
        var asked = Ask(wish, at ?? (around + LocalTime.Noon).InZoneLeniently(wish.Salon.TimeZone).ToInstant());
        var found = at is null ? book.FindAcrossHalfDays(asked) : book.Nearest(asked);
        return [.. found.Select(s => s.StartsAt).Distinct().Order().Select(start => FreeStart.FromInstant(start, wish.Salon.TimeZone))];
    }

    /// <summary>Chair and hands for a start.</summary>
    /// <exception cref="Refusal">The salon wants a word with them first.</exception>
    /// <exception cref="SlotTakenException">It is not free (any more).</exception>
    public async Task<Slot> RequireSlotAtAsync(SelfBookingCriteria wish, Instant start, CancellationToken cancellation)
    {
        var day = start.InZone(wish.Salon.TimeZone).Date;
        if (await MustRingFirstAsync(wish, day, cancellation))
            throw new Refusal("Please ring us: we find you a place.");
        var book = start < clock.GetCurrentInstant() ? null : await LoadAsync(wish, day, cancellation);
        return book?.Nearest(Ask(wish, start) with { Best = 1 }).FirstOrDefault(s => s.StartsAt == start) ?? throw new SlotTakenException();
    }

    /// <summary>Whether a start was lost to another visit, found here or by the database.</summary>
    public static bool IsSlotTakenError(Exception e) => e is SlotTakenException || SlotSaveErrors.FindClash(e) is not null;

    /// <summary>What is said instead of a start that was lost.</summary>
    public async Task<SelfBookingOutcome> AlternativesAsync(SelfBookingCriteria wish, Instant start, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var end = start + new ServiceTimeline(wish.Steps).Length;
        return new SelfBookingOutcome(null)
        {
            Nearest = await FindAsync(wish, start.InZone(wish.Salon.TimeZone).Date, start, cancellation),
            Own = await ClashingVisit.FindFirstAsync(db, current.Client.ClientId, start, end, wish.ButVisit, cancellation),
        };
    }

    private async Task<SlotFacts?> LoadAsync(SelfBookingCriteria wish, LocalDate around, CancellationToken cancellation)
    {
        var zone = wish.Salon.TimeZone;
        var from = Instant.Max(clock.GetCurrentInstant() + Soonest, zone.AtStartOfDay(around.PlusDays(-Around)).ToInstant());
        var to = zone.AtStartOfDay(around.PlusDays(Around + 1)).ToInstant();
        if (from >= to)
            return null;
        await using var db = databases.OpenPracticeWide(Job);
        return await SlotFacts.LoadAsync(db, wish.Salon.Id, new Interval(from, to), current.Client.ClientId, cancellation, wish.ButVisit);
    }

    private static SlotCriteria Ask(SelfBookingCriteria wish, Instant target) =>
        new(new ServiceTimeline(wish.Steps), wish.ServiceKindId, target) { UsualPerson = wish.UsualPerson, Best = Offered };
}
