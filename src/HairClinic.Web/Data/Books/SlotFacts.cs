namespace HairClinic.Web.Data.Books;

/// <summary>
/// One salon's time between two instants, read once: opening hours, chairs and people, and when each is taken. Every
/// offer of a time comes from here; the database still decides when the visit is saved.
/// </summary>
public sealed class SlotFacts
{
    /// <summary>Enough answers to choose some that lie apart from each other.</summary>
    private const int Many = 400;

    // Whatever is under way when the window opens began within a day.
    private static readonly Duration Longest = Duration.FromHours(24);

    private SlotFacts(Salon salon, Interval window, Duration step, IReadOnlyList<SlotChair> chairs, IReadOnlyList<SlotPerson> people)
    {
        (Salon, Window, Step, Chairs, People) = (salon, window, step, chairs, people);
        Hours = OpeningHoursOf(salon);
    }

    /// <summary>With its hours and closures.</summary>
    public Salon Salon { get; }

    public OpeningHours Hours { get; }

    public Interval Window { get; }

    /// <summary>Bookings start this far apart.</summary>
    public Duration Step { get; }

    public IReadOnlyList<SlotChair> Chairs { get; }

    public IReadOnlyList<SlotPerson> People { get; }

    /// <summary>When the client has other visits.</summary>
    public IReadOnlyList<Interval> ClientBusy { get; private init; } = [];

    /// <summary>Four round trips, however many slots are then asked for.</summary>
    /// <param name="clientId">The client: starts at which they have another visit anywhere are left out. Null while none is chosen.</param>
    /// <param name="butVisit">A visit that is to be moved: its own time counts as free.</param>
    public static async Task<SlotFacts> LoadAsync(
        ClinicDb db,
        Guid salonId,
        Interval window,
        Guid? clientId,
        CancellationToken cancellation,
        Guid? butVisit = null
    )
    {
        var (since, until) = (window.Start - Longest, window.End);
        var salon = await db
            .Salons.AsNoTracking()
            .Where(s => s.Id == salonId)
            .Include(s => s.Hours)
            .Include(s => s.Closures)
            .Select(s => new
            {
                Salon = s,
                Minutes = db.PracticeSettings.Select(p => p.SlotMinutes).First(),
                ClientBusy = db
                    .Visits.Where(v =>
                        v.ClientId == clientId && v.HoldsClient && v.StartsAt >= since && v.StartsAt < until && v.Id != butVisit
                    )
                    .Select(v => new { v.StartsAt, v.EndsAt })
                    .ToList(),
            })
            .SingleAsync(cancellation);
        var chairs = await db
            .Chairs.AsNoTracking()
            .Where(c => c.SalonId == salonId && !c.Retired)
            .OrderBy(c => c.Position)
            .ThenBy(c => c.Name)
            .Select(c => new
            {
                c.Id,
                c.Name,
                Busy = db
                    .VisitSegments.Where(s =>
                        s.ChairId == c.Id && s.HoldsChair && s.StartsAt >= since && s.StartsAt < until && s.VisitId != butVisit
                    )
                    .Select(s => new { s.StartsAt, s.EndsAt })
                    .ToList(),
            })
            .ToListAsync(cancellation);
        var hands = await db
            .VisitSegments.AsNoTracking()
            .Where(s => s.HoldsHands && s.StartsAt >= since && s.StartsAt < until && s.VisitId != butVisit)
            .Where(s => db.PersonSalons.Any(w => w.SalonId == salonId && w.PersonId == s.PersonId))
            .Select(s => new
            {
                s.PersonId,
                s.StartsAt,
                s.EndsAt,
            })
            .ToListAsync(cancellation);
        var busy = hands.ToLookup(s => s.PersonId!.Value, s => new Interval(s.StartsAt, s.EndsAt));
        return new SlotFacts(
            salon.Salon,
            window,
            Duration.FromMinutes(salon.Minutes),
            [.. chairs.Select(c => new SlotChair(c.Id, c.Name, [.. c.Busy.Select(b => new Interval(b.StartsAt, b.EndsAt))]))],
            await SlotPerson.LoadForSalonAsync(db, salon.Salon, window, busy, cancellation)
        )
        {
            ClientBusy = [.. salon.ClientBusy.Select(b => new Interval(b.StartsAt, b.EndsAt))],
        };
    }

    public static OpeningHours OpeningHoursOf(Salon salon) =>
        new(salon.Hours.Select(h => new WeekdayTimeRange(h.Day, h.Opens, h.Closes)), salon.Closures.Select(c => c.Days), salon.TimeZone);

    /// <summary>The slots nearest to a start that was wished for: what to offer to someone who just lost it.</summary>
    public IReadOnlyList<Slot> Nearest(SlotCriteria wish) => Find(wish, Duration.Zero, wish.Best);

    /// <summary>
    /// Slots near a day, one for each morning and afternoon first, so that a client has something to choose from;
    /// within a half-day the usual person and a tidy day decide.
    /// </summary>
    public IReadOnlyList<Slot> FindAcrossHalfDays(SlotCriteria wish)
    {
        var found = Find(wish, Duration.FromDays(1), Many);
        var apart = found.DistinctBy(HalfDay).Take(wish.Best).ToList();
        return [.. apart, .. found.Except(apart).Take(wish.Best - apart.Count)];
    }

    private (LocalDate, bool) HalfDay(Slot slot)
    {
        var local = slot.StartsAt.InZone(Salon.TimeZone).LocalDateTime;
        return (local.Date, local.TimeOfDay < LocalTime.Noon);
    }

    private IReadOnlyList<Slot> Find(SlotCriteria wish, Duration nearEnough, int best) =>
        FreeSlots.Find(
            new SlotQuery
            {
                Service = wish.Service,
                From = Window.Start,
                To = Window.End,
                Target = wish.Target,
                Open = Hours.Between(Window.Start, Window.End),
                Chairs =
                [
                    .. Chairs.Where(c => wish.OnlyChair is null || c.Id == wish.OnlyChair).Select(c => new ChairBusyTimes(c.Id, c.Busy)),
                ],
                People =
                [
                    .. People
                        .Where(p => wish.OnlyPerson is null || p.Id == wish.OnlyPerson)
                        .Select(p => new PersonSchedule(p.Id, p.Working, p.Busy, p.Skills)),
                ],
                ClientBusy = ClientBusy,
                SkillsNeeded = [wish.ServiceKindId],
                PreferredPerson = wish.UsualPerson,
                Step = Step,
                NearEnough = nearEnough,
                Best = best,
            }
        );
}

/// <summary>A chair of the salon and when it is taken.</summary>
public sealed record SlotChair(Guid Id, string Name, IReadOnlyList<Interval> Busy);

/// <summary>What a slot is wished for.</summary>
/// <param name="ServiceKindId">The skill that is needed.</param>
/// <param name="Target">The start wished for.</param>
public sealed record SlotCriteria(ServiceTimeline Service, Guid ServiceKindId, Instant Target)
{
    public Guid? OnlyChair { get; init; }
    public Guid? OnlyPerson { get; init; }

    /// <summary>Preferred among equals; others are still offered.</summary>
    public Guid? UsualPerson { get; init; }

    public int Best { get; init; } = 6;
}
