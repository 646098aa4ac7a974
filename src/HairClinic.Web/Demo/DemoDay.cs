using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Demo;

/// <summary>Lets the invented salons work until this moment of today: visits that are over are logged, others have begun or arrived.</summary>
public sealed class DemoDay(ClinicDb db, Instant now)
{
    private static readonly Duration ArrivesEarly = Duration.FromMinutes(30);
    private static readonly Duration FromBondToDoor = Duration.FromMinutes(15);

    public async Task PlayAsync(CancellationToken cancellation)
    {
        var dues = await DueBook.LoadAsync(db, cancellation);
        var salons = await db.Salons.ToListAsync(cancellation);
        var purposes = await db.ServiceKinds.ToDictionaryAsync(s => s.Id, s => s.Purpose, cancellation);
        foreach (var salon in salons)
        {
            var today = salon.DayOf(now);
            var visits = await db
                .Visits.Include(v => v.Segments)
                .Where(v => v.SalonId == salon.Id && v.Day == today && v.State == VisitState.Booked)
                .OrderBy(v => v.StartsAt)
                .ToListAsync(cancellation);
            foreach (var visit in visits)
            {
                if (visit.EndsAt <= now && purposes[visit.ServiceKindId] == ServicePurpose.Rebond)
                    await LogAsync(visit, salon, dues, cancellation);
                else if (visit.EndsAt <= now)
                    visit.Finish();
                else if (visit.StartsAt <= now)
                    visit.Begin();
                else if (visit.StartsAt <= now + ArrivesEarly)
                    visit.Arrive();
            }
            // Before opening there is still somebody to show: one who came early.
            if (visits.TrueForAll(v => v.State is VisitState.Booked or VisitState.Done))
                visits.Find(v => v.State == VisitState.Booked)?.Arrive();
        }
        await db.SaveChangesAsync(cancellation);
    }

    private async Task LogAsync(Visit visit, Salon salon, DueBook dues, CancellationToken cancellation)
    {
        var old = await db
            .Bonds.Include(b => b.Products)
            .SingleOrDefaultAsync(b => b.ClientId == visit.ClientId && b.RemovedOn == null, cancellation);
        if (old is null)
        {
            visit.Finish();
            return;
        }
        var unit = await db.HairSystems.SingleAsync(u => u.Id == old.HairSystemId, cancellation);
        var kind = await db.UnitKinds.SingleAsync(k => k.Id == unit.UnitKindId, cancellation);
        var client = await db.Clients.Include(c => c.Events).SingleAsync(c => c.Id == visit.ClientId, cancellation);
        var used = old.Products.Select(p => (Guid.CreateVersion7(), new ProductUse(p.ProductId, p.LotId, p.Coats))).ToList();
        var basis = dues.BasisFor(client, kind.BaseMaterialId, used.Select(u => (Guid?)u.Item2.ProductId).FirstOrDefault(), old.Attachment);
        var lifted = old.Lift is not null;
        var found = new TakeDown(
            InspectionGrades.AsNew with
            {
                Hair = 1,
            },
            lifted,
            old.Lift?.LiftedOn,
            old.Lift?.Zone,
            lifted ? RemovalReason.Lifted : RemovalReason.Scheduled
        );
        var made = new NewBond(Guid.CreateVersion7(), unit, visit.EndsAt - FromBondToDoor, old.Attachment, used, WaitsKept: true);
        db.Bonds.Add(
            visit.RecordRebond(
                Guid.CreateVersion7(),
                (old, unit, found),
                made,
                salon,
                basis.WindowFor,
                visit.EndsAt,
                visit.PersonId,
                note: null
            )
        );
    }
}
