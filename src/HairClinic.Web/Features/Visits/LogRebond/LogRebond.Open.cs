using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

public sealed partial class LogRebond
{
    /// <returns>Null when there is no such visit in the salons of whoever asks.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await VisitAsync(db, visitId, cancellation) is not { } visit)
            return null;
        var zone = DateTimeZoneProviders.Tzdb[visit.Zone];
        var now = clock.GetCurrentInstant();
        var today = now.InZone(zone).Date;
        var day = visit.Day < today ? visit.Day : today;

        var last = await db
            .Bonds.AsNoTracking()
            .Include(b => b.Products)
            .Where(b => b.ClientId == visit.ClientId)
            .OrderByDescending(b => b.RemovedOn == null)
            .ThenByDescending(b => b.AppliedOn)
            .ThenByDescending(b => b.AppliedAt)
            .FirstOrDefaultAsync(cancellation);
        var units = await UnitsAsync(db, visit.ClientId, visit.SalonId, zone, cancellation);
        var products = await ProductsAsync(db, day, cancellation);
        var settings = await db
            .PracticeSettings.AsNoTracking()
            .Select(s => new
            {
                s.CureHours,
                s.DaysBeforeEvent,
                Events = db.LifeEvents.Where(e => e.ClientId == visit.ClientId).ToList(),
                Blocks = db.Clearances.Where(c => c.ClientId == visit.ClientId && c.Kind == ClearanceSeverity.Block).ToList(),
            })
            .SingleAsync(cancellation);
        var blocks = settings.Blocks.Where(b => b.IsValidOn(day)).ToList();
        var worn = last is { IsOpen: true } ? Worn(last, units, new Cure(settings.CureHours), today, now) : null;
        var finished = day < today ? visit.EndsAt.InZone(zone).TimeOfDay : (LocalTime?)null;
        var start = RebondPrefill.Prefill(visitId, worn, last, units, products, finished);
        // A draft about another bond than the one on the head would log the wrong take-down.
        var draft = visit.Logged is null ? await drafts.FindAsync<Input>(nameof(LogRebond), visitId, cancellation) : null;
        return new Screen(
            visitId,
            visit.State,
            visit.Service,
            visit.ClientId,
            visit.CalledAs ?? visit.ClientName,
            visit.ClientNote,
            visit.VisitNote,
            day,
            today,
            visit.Zone,
            worn,
            units,
            products,
            start,
            draft?.WornBondId == worn?.BondId ? draft : null,
            visit.Logged
        )
        {
            BondingBlocked = blocks.Any(b => b.ConcernsServiceOn(ServicePurpose.Rebond, day)),
            Pause = BondingPause.On(settings.Events, day, settings.DaysBeforeEvent),
            MayAllowBonding = StaffPermissions.MayReadHealth(current.Person),
            MayBook = StaffPermissions.MayBook(current.Person.StaffRole),
            MayOverride = ClearanceGate.MaySetAside(current.Person),
            NoBondUntil = last?.AsksToWaitOn(day) == true ? last.NoBondUntil : null,
            BlockedProducts = [.. blocks.Select(b => b.ProductId).OfType<Guid>()],
        };
    }

    private sealed record VisitFacts(
        VisitState State,
        LocalDate Day,
        Instant EndsAt,
        string? VisitNote,
        string Service,
        string Zone,
        Guid SalonId,
        Guid ClientId,
        string ClientName,
        string? CalledAs,
        string? ClientNote,
        List<LoggedRebond> AllLogged
    )
    {
        // A list of one at most: the first of them would be numbered over everybody's records.
        public LoggedRebond? Logged => AllLogged.FirstOrDefault();
    }

    private Task<VisitFacts?> VisitAsync(ClinicDb db, Guid visitId, CancellationToken cancellation)
    {
        var salons = current.Person.Salons;
        return (
            from visit in db.Visits
            join client in db.Clients on visit.ClientId equals client.Id
            join salon in db.Salons on visit.SalonId equals salon.Id
            join service in db.ServiceKinds on visit.ServiceKindId equals service.Id
            where visit.Id == visitId && salons.Contains(visit.SalonId)
            select new VisitFacts(
                visit.State,
                visit.Day,
                visit.EndsAt,
                visit.Note,
                service.Name,
                salon.Zone,
                salon.Id,
                client.Id,
                client.Name,
                client.CalledAs,
                client.Note,
                db.VisitRecords.Where(r => r.VisitId == visit.Id)
                    .Select(r => new LoggedRebond(
                        db.People.Where(p => p.Id == r.RecordedBy).Select(p => p.Name).FirstOrDefault(),
                        r.RecordedAt,
                        (
                            from b in db.Bonds
                            join u in db.HairSystems on b.HairSystemId equals u.Id
                            where b.VisitId == visit.Id
                            select u.Serial
                        ).FirstOrDefault(),
                        db.Bonds.Where(b => b.VisitId == visit.Id).Select(b => (LocalDate?)b.DueOn).FirstOrDefault(),
                        r.Note
                    ))
                    .ToList()
            )
        ).SingleOrDefaultAsync(cancellation);
    }

    internal static WornUnit? Worn(Bond bond, IReadOnlyList<UnitChoice> units, Cure cure, LocalDate today, Instant now)
    {
        var dates = new BondDates(bond.OpensOn, bond.ClosesOn)
        {
            AppliedAt = bond.AppliedAt,
            Cure = cure,
            LiftedOn = bond.Lift is { } lift ? lift.UpBy : null,
        };
        var unit = units.First(u => u.Id == bond.HairSystemId);
        return new WornUnit(
            bond.Id,
            unit.Id,
            unit.Serial,
            unit.BaseName,
            bond.AppliedOn,
            dates.StateOn(today, now),
            bond.DueOn,
            bond.ClosesOn,
            bond.Lift,
            unit.Last
        );
    }

    /// <param name="salonId">Whose stock can be lent from.</param>
    internal static async Task<List<UnitChoice>> UnitsAsync(
        ClinicDb db,
        Guid clientId,
        Guid salonId,
        DateTimeZone zone,
        CancellationToken cancellation
    )
    {
        var rows = await (
            from unit in db.HairSystems
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
            where
                unit.ClientId == clientId
                || unit.ClientId == null && unit.PlaceSalonId == salonId
                || unit.ClientId == null && db.Bonds.Any(b => b.HairSystemId == unit.Id && b.ClientId == clientId && b.RemovedOn == null)
            orderby unit.ClientId == null, unit.Serial
            select new
            {
                unit.Id,
                unit.Serial,
                material.Name,
                unit.State,
                unit.Cleaning,
                IsNobodys = unit.ClientId == null,
                Records = db
                    .VisitRecords.Where(r => r.RemovedUnitId == unit.Id)
                    .Select(r => new WrittenGrades(
                        r.Grades.Shedding,
                        r.Grades.Knots,
                        r.Grades.Base,
                        r.Grades.Fit,
                        r.Grades.Hair,
                        r.Grades.Colour,
                        r.RecordedAt
                    ))
                    .ToList(),
            }
        ).ToListAsync(cancellation);
        return
        [
            .. rows.Where(r => r.State == UnitState.Bonded || r.State.IsBondable())
                .Select(r => new UnitChoice(r.Id, r.Serial, r.Name, r.State, LastGrades.From(r.Records, zone))
                {
                    IsNobodys = r.IsNobodys,
                    Unclean = r.Cleaning is UnitCleaning.ToBeCleaned or UnitCleaning.Drying,
                }),
        ];
    }

    internal static async Task<List<ProductChoice>> ProductsAsync(ClinicDb db, LocalDate day, CancellationToken cancellation)
    {
        var products = await db
            .Products.AsNoTracking()
            .Include(p => p.Lots)
            .Where(p => !p.Retired)
            .OrderBy(p => p.Name)
            .ToListAsync(cancellation);
        return
        [
            .. products.Select(p => new ProductChoice(
                p.Id,
                p.Name,
                p.Kind,
                [
                    .. p
                        .Lots.Where(l => !l.Finished)
                        .OrderBy(l => l.ExpiresOn ?? LocalDate.MaxIsoValue)
                        .ThenBy(l => l.Code, StringComparer.Ordinal)
                        .Select(l => new LotChoice(l.Id, l.Code, l.ExpiresOn, l.IsUsableOn(day))),
                ]
            )),
        ];
    }
}
