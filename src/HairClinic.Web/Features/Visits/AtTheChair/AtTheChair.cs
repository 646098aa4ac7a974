using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

/// <summary>The day as the person at the chair needs it: who is in it, who is next, what is on the head and what bonded it.</summary>
public sealed class AtTheChair(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null when the person has no salon.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        var me = current.Person;
        var salonId = me.AtSalon ?? (me.Salons is [var first, ..] ? first : Guid.Empty);
        await using var db = databases.Open();
        var salon = await db.Salons.Where(s => s.Id == salonId).Select(s => new { s.Name, s.Zone }).SingleOrDefaultAsync(cancellation);
        if (salon is null)
            return null;
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[salon.Zone]).Date;
        var cureHours = await db.PracticeSettings.Select(s => s.CureHours).SingleAsync(cancellation);
        var visits = await Visits(db, me, salonId, today).ToListAsync(cancellation);
        return new Screen(salon.Name, salon.Zone, today, now, new Cure(cureHours), visits);
    }

    /// <exception cref="Refusal">It is in the chair, over or called off already, or its day has not come.</exception>
    /// <exception cref="OvertakenException">Somebody changed the visit in the meantime.</exception>
    public Task<Begun> BeginAsync(Guid key, Begin input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(AtTheChair),
            input,
            async db =>
            {
                var found =
                    await db
                        .Visits.Where(v => v.Id == input.VisitId && current.Person.Salons.Contains(v.SalonId))
                        .Select(v => new { Visit = v, Salon = db.Salons.First(s => s.Id == v.SalonId) })
                        .SingleOrDefaultAsync(cancellation)
                    ?? throw new Refusal("This visit is not in the book of your salons.");
                var visit = found.Visit;
                WriteOnce.ExpectVersion(db, visit, input.Version);
                visit.Begin(found.Salon.DayOf(clock.GetCurrentInstant()));
                return new Begun(visit.Id, visit.State);
            },
            cancellation
        );

    private static IQueryable<ChairVisit> Visits(ClinicDb db, PersonActor me, Guid salonId, LocalDate today)
    {
        var everyones = me.StaffRole == StaffRole.Owner;
        return from visit in db.Visits.AsNoTracking()
            join client in db.Clients on visit.ClientId equals client.Id
            join service in db.ServiceKinds on visit.ServiceKindId equals service.Id
            where visit.SalonId == salonId && visit.Day == today
            where visit.State != VisitState.Cancelled && visit.State != VisitState.DidNotCome
            where everyones || visit.PersonId == me.PersonId || visit.PersonId == null
            orderby visit.StartsAt, visit.Id
            select new ChairVisit(
                visit.Id,
                visit.Version,
                visit.State,
                visit.StartsAt,
                visit.EndsAt,
                service.Name,
                service.Purpose,
                db.Chairs.Where(c => c.Id == visit.ChairId).Select(c => c.Name).FirstOrDefault(),
                db.People.Where(p => p.Id == visit.PersonId).Select(p => p.Name).FirstOrDefault(),
                client.CalledAs ?? client.Name,
                client.Note,
                visit.Note,
                db.VisitRecords.Any(r => r.VisitId == visit.Id && (r.RecordedBy == me.PersonId || everyones)),
                (
                    from bond in db.Bonds
                    join unit in db.HairSystems on bond.HairSystemId equals unit.Id
                    join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
                    join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
                    // Asked about this visit too: an equality alone would become a join over everybody's bonds.
                    where bond.ClientId == client.Id && bond.RemovedOn == null && bond.AppliedOn <= visit.Day
                    select new OnHead(
                        unit.Serial,
                        material.Name,
                        bond.VisitId,
                        bond.AppliedOn,
                        bond.AppliedAt,
                        bond.Attachment,
                        bond.OpensOn,
                        bond.DueOn,
                        bond.ClosesOn,
                        bond.Lift,
                        bond.Products.OrderBy(p => p.Id)
                            .Select(p => new RecipeLine(
                                db.Products.Where(x => x.Id == p.ProductId).Select(x => x.Name).First(),
                                db.ProductLots.Where(x => x.Id == p.LotId).Select(x => x.Code).FirstOrDefault(),
                                p.Coats,
                                db.Products.Where(x => x.Id == p.ProductId).Select(x => x.LabelCureHours).First()
                            ))
                            .ToList()
                    )
                ).FirstOrDefault()
            );
    }

    public sealed record Screen(string Salon, string Zone, LocalDate Today, Instant Now, Cure Cure, IReadOnlyList<ChairVisit> Visits)
    {
        public IEnumerable<ChairVisit> InChair => Visits.Where(v => v.State == VisitState.InChair);

        /// <summary>Whoever is here already comes before whoever is only booked.</summary>
        public IEnumerable<ChairVisit> ToCome =>
            Visits
                .Where(v => v.State is VisitState.Booked or VisitState.Arrived)
                .OrderBy(v => v.State == VisitState.Booked)
                .ThenBy(v => v.StartsAt);

        public IEnumerable<ChairVisit> Done => Visits.Where(v => v.State == VisitState.Done);

        public BondState StateOf(OnHead head) =>
            new BondDates(head.OpensOn, head.ClosesOn)
            {
                AppliedAt = head.AppliedAt,
                Cure = CureOf(head),
                LiftedOn = head.Lift?.UpBy,
            }.StateOn(Today, Now);

        /// <summary>When the bond has cured, by the practice's hours or the label's if those are more; null where its time is not known.</summary>
        public Instant? CuredAt(OnHead head) => head.AppliedAt is { } at ? CureOf(head).EndsAt(at) : null;

        private Cure CureOf(OnHead head) => DueCalculator.CureOf(Cure.Hours, head.Recipe.Max(p => p.LabelCureHours));
    }

    /// <param name="MayTakeBack">It is logged, and by whoever looks, or by anyone if they own the practice.</param>
    public sealed record ChairVisit(
        Guid Id,
        uint Version,
        VisitState State,
        Instant StartsAt,
        Instant EndsAt,
        string Service,
        ServicePurpose Purpose,
        string? Chair,
        string? Person,
        string ClientName,
        string? ClientNote,
        string? VisitNote,
        bool MayTakeBack,
        OnHead? Head
    );

    /// <param name="MadeAt">The visit that made the bond.</param>
    public sealed record OnHead(
        string Serial,
        string BaseName,
        Guid? MadeAt,
        LocalDate AppliedOn,
        Instant? AppliedAt,
        Attachment Attachment,
        LocalDate OpensOn,
        LocalDate DueOn,
        LocalDate ClosesOn,
        Lift? Lift,
        IReadOnlyList<RecipeLine> Recipe
    );

    public sealed record RecipeLine(string Product, string? Lot, int? Coats, int? LabelCureHours);

    public sealed record Begin(Guid VisitId, uint Version);

    public sealed record Begun(Guid VisitId, VisitState State);
}
