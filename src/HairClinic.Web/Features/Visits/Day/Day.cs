using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>The day of the salon the person is at: its chairs along time, and who is here.</summary>
public sealed class Day(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <summary>Four round trips.</summary>
    /// <param name="date">Today in the salon's zone when left out.</param>
    /// <returns>Nothing when the person works in no salon.</returns>
    public async Task<Screen?> OpenAsync(LocalDate? date, CancellationToken cancellation)
    {
        if ((current.Person.AtSalon ?? current.Person.Salons.Select(s => (Guid?)s).FirstOrDefault()) is not { } salonId)
            return null;
        await using var db = databases.Open();
        var salon = await db
            .Salons.AsNoTracking()
            .Include(s => s.Hours)
            .Include(s => s.Closures)
            .SingleOrDefaultAsync(s => s.Id == salonId, cancellation);
        if (salon is null)
            return null;
        var now = clock.GetCurrentInstant();
        var day = date ?? salon.DayOf(now);
        var chairs = await db
            .Chairs.Where(c => c.SalonId == salonId && (!c.Retired || db.Visits.Any(v => v.ChairId == c.Id && v.Day == day)))
            .OrderBy(c => c.Position)
            .ThenBy(c => c.Name)
            .Select(c => new ChairView(c.Id, c.Name, c.Retired))
            .ToListAsync(cancellation);
        var visits = await db
            .Visits.Where(v => v.SalonId == salonId && v.Day == day)
            .OrderBy(v => v.StartsAt)
            .Select(v => new VisitView(
                v.Id,
                v.Version,
                v.State,
                v.HoldsChair,
                v.ChairId,
                v.StartsAt,
                v.EndsAt,
                db.Clients.First(c => c.Id == v.ClientId).Name,
                db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Name,
                db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Purpose,
                db.Chairs.Where(c => c.Id == v.ChairId).Select(c => c.Name).FirstOrDefault(),
                db.People.Where(p => p.Id == v.PersonId).Select(p => p.Name).FirstOrDefault(),
                v.Segments.OrderBy(s => s.Position).Select(s => new StepView(s.Kind, s.StartsAt, s.EndsAt)).ToList(),
                db.Clients.First(c => c.Id == v.ClientId).Phone
            ))
            .ToListAsync(cancellation);
        var away = await db
            .People.Where(p => !p.Left && p.Salons.Any(s => s.SalonId == salonId) && p.Absences.Any(a => a.From <= day && a.To >= day))
            .OrderBy(p => p.Name)
            .Select(p => p.Name)
            .ToListAsync(cancellation);
        var closure = salon.Closures.FirstOrDefault(c => c.From <= day && c.To >= day);
        return new Screen(
            salon.Name,
            salon.TimeZone,
            day,
            salon.DayOf(now),
            now,
            SlotFacts.OpeningHoursOf(salon).On(day),
            closure?.Reason,
            chairs,
            visits,
            away
        )
        {
            Taken = current.Person.StaffRole == StaffRole.Trainee ? await TakenAsync(salonId, day, visits, cancellation) : [],
            MayBook = current.Person.StaffRole is StaffRole.Owner or StaffRole.Manager or StaffRole.FrontDesk,
            MayLog = current.Person.StaffRole is StaffRole.Owner or StaffRole.Stylist or StaffRole.Trainee,
        };
    }

    // A trainee sees the visits of others as time that is taken: which chair, and when. Whose they are is not even read.
    private async Task<IReadOnlyList<TakenView>> TakenAsync(
        Guid salonId,
        LocalDate day,
        IReadOnlyCollection<VisitView> own,
        CancellationToken cancellation
    )
    {
        var seen = own.Select(v => v.Id).ToList();
        await using var db = databases.OpenPracticeWide(nameof(Day));
        return await db
            .Visits.Where(v => v.SalonId == salonId && v.Day == day && v.HoldsChair && v.ChairId != null && !seen.Contains(v.Id))
            .OrderBy(v => v.StartsAt)
            .Select(v => new TakenView(
                v.ChairId!.Value,
                v.StartsAt,
                v.EndsAt,
                v.Segments.OrderBy(s => s.Position).Select(s => new StepView(s.Kind, s.StartsAt, s.EndsAt)).ToList()
            ))
            .ToListAsync(cancellation);
    }

    /// <param name="Open">When the salon is open on this day; empty when it is closed.</param>
    /// <param name="ClosedBecause">The closure's reason, where one covers the day.</param>
    /// <param name="Away">People who are not at work on this day.</param>
    public sealed record Screen(
        string Salon,
        DateTimeZone Zone,
        LocalDate Date,
        LocalDate Today,
        Instant Now,
        IReadOnlyList<Interval> Open,
        string? ClosedBecause,
        IReadOnlyList<ChairView> Chairs,
        IReadOnlyList<VisitView> Visits,
        IReadOnlyList<string> Away
    )
    {
        /// <summary>Time of others' visits, where whoever looks does not see whose.</summary>
        public IReadOnlyList<TakenView> Taken { get; init; } = [];

        public bool MayBook { get; init; }
        public bool MayLog { get; init; }
    }

    public sealed record ChairView(Guid Id, string Name, bool Retired);

    /// <param name="Phone">On the printed sheet, for when the line is down.</param>
    /// <param name="HoldsChair">False once it was called off or the client did not come, and for a visit of an old book.</param>
    public sealed record VisitView(
        Guid Id,
        uint Version,
        VisitState State,
        bool HoldsChair,
        Guid? ChairId,
        Instant StartsAt,
        Instant EndsAt,
        string Client,
        string Service,
        ServicePurpose Purpose,
        string? Chair,
        string? Person,
        IReadOnlyList<StepView> Steps,
        string? Phone = null
    );

    /// <summary>A chair that is taken for a while, and nothing of whom or what for.</summary>
    public sealed record TakenView(Guid ChairId, Instant StartsAt, Instant EndsAt, IReadOnlyList<StepView> Steps);

    public sealed record StepView(SegmentKind Kind, Instant StartsAt, Instant EndsAt);
}
