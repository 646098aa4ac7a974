using System.Diagnostics.CodeAnalysis;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Features.Visits;

public sealed partial class BookVisit
{
    /// <returns>Nothing when the person works in no salon, or not in this one.</returns>
    public async Task<Screen?> OpenAsync(Guid? salonId, CancellationToken cancellation)
    {
        var at = salonId ?? current.Person.AtSalon ?? current.Person.Salons.Select(s => (Guid?)s).FirstOrDefault();
        if (at is not { } salon || !current.Person.Salons.Contains(salon))
            return null;
        await using var db = databases.Open();
        var place = await db.Salons.AsNoTracking().SingleOrDefaultAsync(s => s.Id == salon, cancellation);
        if (place is null)
            return null;
        var services = await db
            .ServiceKinds.AsNoTracking()
            .Where(k => !k.Retired && k.Steps.Any())
            .Include(k => k.Steps)
            .OrderBy(k => k.Name)
            .ToListAsync(cancellation);
        var chairs = await db
            .Chairs.Where(c => c.SalonId == salon && !c.Retired)
            .OrderBy(c => c.Position)
            .Select(c => new Choice(c.Id, c.Name))
            .ToListAsync(cancellation);
        var people = await db
            .People.Where(p => !p.Left && p.Skills.Any() && p.Salons.Any(s => s.SalonId == salon))
            .OrderBy(p => p.Name)
            .Select(p => new Choice(p.Id, p.Name))
            .ToListAsync(cancellation);
        return new Screen(
            salon,
            place.Name,
            place.TimeZone,
            place.DayOf(clock.GetCurrentInstant()),
            [.. services.Select(k => new ServiceChoice(k.Id, k.Name, k.Purpose, Steps(k.Steps)))],
            people,
            chairs
        )
        {
            MayCallOff = current.Person.StaffRole is StaffRole.Owner or StaffRole.Manager or StaffRole.FrontDesk,
        };
    }

    /// <summary>One round trip.</summary>
    public async Task<ClientView?> ClientAsync(Guid clientId, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.Open();
        var bonds = LastBondQuery.OfClient(db, clientId);
        return await db
            .Clients.Where(c => c.Id == clientId && c.MergedIntoId == null)
            .Select(c => new ClientView(
                c.Id,
                c.Name,
                c.Code,
                db.Bonds.Where(b => b.ClientId == c.Id && b.RemovedOn == null)
                    .Select(b => new DueView(b.OpensOn, b.DueOn, b.ClosesOn))
                    .FirstOrDefault(),
                db.Visits.Where(v => v.ClientId == c.Id && v.State == VisitState.Done)
                    .OrderByDescending(v => v.StartsAt)
                    .Select(v => v.PersonId)
                    .FirstOrDefault(),
                db.Visits.Where(v => v.ClientId == c.Id && v.State == VisitState.Booked && v.StartsAt >= now)
                    .OrderBy(v => v.StartsAt)
                    .Select(v => new UpcomingView(
                        v.Id,
                        v.StartsAt,
                        db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Name,
                        db.Salons.Where(s => s.Id == v.SalonId).Select(s => s.Name).First()
                    ))
                    .ToList()
            )
            {
                NoBondUntil = bonds.Select(b => b.NoBondUntil).FirstOrDefault(),
            })
            .SingleOrDefaultAsync(cancellation);
    }

    /// <returns>That the client has another visit then, in words; null when they have none.</returns>
    public async Task<Refusal?> DescribeClientClashAsync(Guid clientId, Instant from, Instant to, CancellationToken cancellation)
    {
        if (await slots.FindClientClashAsync(clientId, from, to, butVisit: null, cancellation) is not { } clash)
            return null;
        await using var db = databases.Open();
        return clash.ToRefusal(await db.Clients.Where(c => c.Id == clientId).Select(c => c.Name).SingleAsync(cancellation));
    }

    public Task<IReadOnlyList<SlotOffer>> FindSlotsAsync(SlotRequest ask, CancellationToken cancellation) =>
        slots.FindAsync(ask, cancellation);

    /// <summary>By the beginnings of names and codes, or the end of a phone number; every word must fit.</summary>
    [SuppressMessage("Globalization", "CA1309", Justification = "PostgreSQL compares; the column's collation is ordinal.")]
    public async Task<IReadOnlyList<ComboOption>> FindClientsAsync(string typed, CancellationToken cancellation)
    {
        var found = FindWordIndexer.Words(typed).Take(5).ToList();
        if (found.Count == 0)
            return [];
        await using var db = databases.Open();
        var clients = db.Clients.Where(c => c.MergedIntoId == null && c.LeftOn == null);
        foreach (var word in found)
        {
            var (until, phone) = (After(word), FindWordIndexer.ReverseDigits(word));
            var (byPhone, phoneUntil) = (phone.Length >= 3, After(phone));
            clients = clients.Where(c =>
                db.FindWords.Any(w =>
                    w.SubjectId == c.Id
                    && w.Kind != FindWordKind.UnitSerial
                    && (
                        (string.Compare(w.Word, word) >= 0 && string.Compare(w.Word, until) < 0)
                        || (
                            byPhone
                            && w.Kind == FindWordKind.ClientPhone
                            && string.Compare(w.Word, phone) >= 0
                            && string.Compare(w.Word, phoneUntil) < 0
                        )
                    )
                )
            );
        }
        return await clients
            .OrderBy(c => c.Name)
            .Take(8)
            .Select(c => new ComboOption(c.Id.ToString(), c.Name, c.Code))
            .ToListAsync(cancellation);
    }

    // Words hold letters and digits only, so this stands behind every word that begins so.
    private static string After(string word) => word + '\uffff';

    private static List<ServiceSegment> Steps(IEnumerable<ServiceStep> steps) =>
        [.. steps.OrderBy(s => s.Position).Select(s => new ServiceSegment(s.Kind, s.Minutes))];

    public sealed record Screen(
        Guid SalonId,
        string Salon,
        DateTimeZone Zone,
        LocalDate Today,
        IReadOnlyList<ServiceChoice> Services,
        IReadOnlyList<Choice> People,
        IReadOnlyList<Choice> Chairs
    )
    {
        public bool MayCallOff { get; init; }

        /// <summary>The one asked for, else the plainest rebond: what most visits are.</summary>
        public ServiceChoice ServiceFor(Guid? wanted) =>
            Services.FirstOrDefault(s => s.Id == wanted)
            ?? Services.Where(s => s.Purpose == ServicePurpose.Rebond).MinBy(s => s.Minutes)
            ?? Services[0];
    }

    public sealed record ServiceChoice(Guid Id, string Name, ServicePurpose Purpose, IReadOnlyList<ServiceSegment> Steps)
    {
        public int Minutes => Steps.Sum(s => s.Minutes);
    }

    /// <param name="UsualPerson">Whose hands did the last visit.</param>
    public sealed record ClientView(
        Guid Id,
        string Name,
        string Code,
        DueView? Due,
        Guid? UsualPerson,
        IReadOnlyList<UpcomingView> Upcoming
    )
    {
        /// <summary>Said when the last bond came off; it speaks while nothing is bonded.</summary>
        public LocalDate? NoBondUntil { get; init; }
    }

    public sealed record DueView(LocalDate Opens, LocalDate DueOn, LocalDate Closes);

    public sealed record UpcomingView(Guid VisitId, Instant StartsAt, string Service, string Salon);
}
