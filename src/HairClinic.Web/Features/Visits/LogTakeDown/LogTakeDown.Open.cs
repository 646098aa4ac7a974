using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Visits;

public sealed partial class LogTakeDown
{
    /// <returns>Null when there is no such visit in the salons of whoever asks.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        var salons = current.Person.Salons;
        await using var db = databases.Open();
        var found = await (
            from visit in db.Visits.AsNoTracking()
            join client in db.Clients on visit.ClientId equals client.Id
            join salon in db.Salons on visit.SalonId equals salon.Id
            where visit.Id == visitId && salons.Contains(visit.SalonId)
            select new
            {
                visit.Day,
                VisitNote = visit.Note,
                salon.Zone,
                visit.SalonId,
                visit.ClientId,
                Name = client.CalledAs ?? client.Name,
                ClientNote = client.Note,
                // Lists of one at most: the first of them would be numbered over everybody's rows.
                Worn = db.Bonds.Where(b => b.ClientId == visit.ClientId && b.RemovedOn == null).ToList(),
                Logged = db
                    .VisitRecords.Where(r => r.VisitId == visit.Id)
                    .Select(r => new LogRebond.LoggedRebond(
                        db.People.Where(p => p.Id == r.RecordedBy).Select(p => p.Name).FirstOrDefault(),
                        r.RecordedAt,
                        null,
                        null,
                        r.Note
                    ))
                    .ToList(),
            }
        ).SingleOrDefaultAsync(cancellation);
        if (found is null)
            return null;
        var zone = DateTimeZoneProviders.Tzdb[found.Zone];
        var now = clock.GetCurrentInstant();
        var today = now.InZone(zone).Date;
        var day = LocalDate.Min(found.Day, today);
        var bond = found.Worn.FirstOrDefault();
        var units = bond is null ? [] : await LogRebond.UnitsAsync(db, found.ClientId, found.SalonId, zone, cancellation);
        var cure = new Cure(await db.PracticeSettings.Select(s => s.CureHours).SingleAsync(cancellation));
        var worn = bond is null ? null : LogRebond.Worn(bond, units, cure, today, now);
        var products = bond is null ? [] : await LogRebond.ProductsAsync(db, day, cancellation);
        var start = new Input { VisitId = visitId, WornBondId = worn?.BondId };
        start.SetToldLift(worn?.Lift);
        var logged = found.Logged.FirstOrDefault();
        // A draft about another bond than the one on the head would log the wrong take-down.
        var draft = logged is null ? await drafts.FindAsync<Input>(nameof(LogTakeDown), visitId, cancellation) : null;
        return new Screen(
            found.ClientId,
            found.Name,
            found.ClientNote,
            found.VisitNote,
            day,
            today,
            found.Zone,
            worn,
            [.. products.Where(p => p.Kind is ProductKind.Remover or ProductKind.Solvent or ProductKind.Cleaner or ProductKind.Other)],
            start,
            draft?.WornBondId == worn?.BondId ? draft : null,
            logged
        )
        {
            MayReadHealth = StaffPermissions.MayReadHealth(current.Person),
        };
    }
}
