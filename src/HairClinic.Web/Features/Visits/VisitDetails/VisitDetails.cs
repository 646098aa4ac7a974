using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>One visit: what, when, who, where it stands, and what can be done about it.</summary>
public sealed class VisitDetails(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <returns>Nothing when there is no such visit in the person's salons.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        var (role, now) = (current.Person.StaffRole, clock.GetCurrentInstant());
        var seesPhotos = StaffPermissions.MayReadHealth(current.Person);
        await using var db = databases.Open();
        return await db.IncludingTakenBack<Visit>()
            .Where(v => v.Id == visitId && current.Person.Salons.Contains(v.SalonId))
            .Select(v => new Screen(
                v.Id,
                v.Version,
                v.State,
                v.ClientId,
                db.Clients.First(c => c.Id == v.ClientId).Name,
                db.Clients.First(c => c.Id == v.ClientId).CalledAs,
                db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Name,
                db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Purpose,
                db.Salons.First(s => s.Id == v.SalonId).Name,
                db.Salons.First(s => s.Id == v.SalonId).Zone,
                v.Day,
                v.StartsAt,
                v.EndsAt,
                db.Chairs.Where(c => c.Id == v.ChairId).Select(c => c.Name).FirstOrDefault(),
                db.People.Where(p => p.Id == v.PersonId).Select(p => p.Name).FirstOrDefault(),
                v.Note,
                db.VisitRecords.Where(r => r.VisitId == v.Id).Select(r => r.Note).FirstOrDefault(),
                v.Segments.OrderBy(s => s.Position).Select(s => new StepView(s.Kind, s.StartsAt, s.EndsAt)).ToList()
            )
            {
                TakenBack = (
                    from bond in db.Bonds
                    join unit in db.HairSystems on bond.HairSystemId equals unit.Id
                    where bond.VisitId == v.Id && bond.RemovedBecause == RemovalReason.TakenBack
                    orderby bond.Id
                    select new TakenBackBond(
                        unit.Serial,
                        bond.Products.OrderBy(p => p.Id)
                            .Select(p => new UsedLine(
                                db.Products.Where(x => x.Id == p.ProductId).Select(x => x.Name).First(),
                                db.ProductLots.Where(x => x.Id == p.LotId).Select(x => x.Code).FirstOrDefault()
                            ))
                            .ToList()
                    )
                ).ToList(),
                TakenDownWith = (
                    from used in db.TakeDownProducts
                    join record in db.VisitRecords on used.VisitRecordId equals record.Id
                    where record.VisitId == v.Id
                    orderby used.Id
                    select new UsedLine(
                        db.Products.Where(x => x.Id == used.ProductId).Select(x => x.Name).First(),
                        db.ProductLots.Where(x => x.Id == used.LotId).Select(x => x.Code).FirstOrDefault()
                    )
                ).ToList(),
                MayBook = role == StaffRole.Owner || role == StaffRole.Manager || role == StaffRole.FrontDesk,
                Now = now,
                StandsAside =
                    !v.HoldsClient && (v.State == VisitState.Booked || v.State == VisitState.Arrived || v.State == VisitState.InChair),
                MayLog = role == StaffRole.Owner || role == StaffRole.Stylist || role == StaffRole.Trainee,
                WearsBond = db.Bonds.Any(b => b.ClientId == v.ClientId && b.RemovedOn == null),
                SeesPhotos = seesPhotos,
            })
            .SingleOrDefaultAsync(cancellation);
    }

    public sealed record Screen(
        Guid VisitId,
        uint Version,
        VisitState State,
        Guid ClientId,
        string Client,
        string? CalledAs,
        string Service,
        ServicePurpose Purpose,
        string Salon,
        string Zone,
        LocalDate Day,
        Instant StartsAt,
        Instant EndsAt,
        string? Chair,
        string? Person,
        string? Note,
        string? RecordNote,
        IReadOnlyList<StepView> Steps
    )
    {
        public bool MayBook { get; init; }

        /// <summary>What was logged here and taken back: for whoever asks which product was on which head.</summary>
        public IReadOnlyList<TakenBackBond> TakenBack { get; init; } = [];

        /// <summary>Removers and cleaners that a bond was taken down with here.</summary>
        public IReadOnlyList<UsedLine> TakenDownWith { get; init; } = [];

        public Instant Now { get; init; }

        /// <summary>The client has another visit at the same time, from two records that were merged.</summary>
        public bool StandsAside { get; init; }

        public LocalDate Today => Now.InZone(DateTimeZoneProviders.Tzdb[Zone]).Date;

        public bool DayHasCome => Day <= Today;

        public bool MayLog { get; init; }

        /// <summary>There is something to take down.</summary>
        public bool WearsBond { get; init; }

        public bool SeesPhotos { get; init; }

        public bool IsOpen => State is VisitState.Booked or VisitState.Arrived;

        public bool CanBeLogged => DayHasCome && State.IsLive();
    }

    /// <summary>A bond whose log was taken back: it never held, but its products may have been on that head.</summary>
    public sealed record TakenBackBond(string Serial, IReadOnlyList<UsedLine> Products);

    /// <param name="Lot">Its code; null where none was said.</param>
    public sealed record UsedLine(string Product, string? Lot);

    public sealed record StepView(SegmentKind Kind, Instant StartsAt, Instant EndsAt);
}
