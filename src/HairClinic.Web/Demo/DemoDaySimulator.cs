using HairClinic.Web.Data;
using HairClinic.Web.Demo.Truth;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Demo;

/// <summary>Lets the invented salons work until this moment of today: visits that are over are logged, others have begun or arrived.</summary>
public sealed class DemoDaySimulator(ClinicDb db, DemoHistory history, Instant now)
{
    private static readonly Duration ArrivesEarly = Duration.FromMinutes(30);
    private static readonly Duration FromBondToDoor = Duration.FromMinutes(15);

    public async Task PlayAsync(CancellationToken cancellation)
    {
        var dues = await DueFacts.LoadAsync(db, cancellation);
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
                    visit.Finish(today);
                else if (visit.StartsAt <= now)
                    visit.Begin(today);
                else if (visit.StartsAt <= now + ArrivesEarly)
                    visit.Arrive(today);
            }
            // Before opening there is still somebody to show: one who came early.
            if (visits.TrueForAll(v => v.State is VisitState.Booked or VisitState.Done))
                visits.Find(v => v.State == VisitState.Booked)?.Arrive(today);
        }
        await db.SaveChangesAsync(cancellation);
    }

    private async Task LogAsync(Visit visit, Salon salon, DueFacts dues, CancellationToken cancellation)
    {
        var old = await db
            .Bonds.Include(b => b.Products)
            .SingleOrDefaultAsync(b => b.ClientId == visit.ClientId && b.RemovedOn == null, cancellation);
        var client = await db.Clients.Include(c => c.Events).SingleAsync(c => c.Id == visit.ClientId, cancellation);
        if (old is null || history.Lives.FirstOrDefault(l => l.Client.Code == client.Code) is not { Open: { } bond } life)
        {
            visit.Finish(salon.DayOf(now));
            return;
        }
        var random = new Random(life.Client.Number);
        var units = await db.HairSystems.Where(u => u.ClientId == client.Id).OrderBy(u => u.Dates.ArrivedOn).ToListAsync(cancellation);
        var worn = units.Single(u => u.Id == old.HairSystemId);
        var day = visit.Day;
        var off = bond.WithRemoval(day, RemovalReason.Scheduled, random).Row;
        var grades = bond.Unit.DrawInspectionGrades(random, bond.Unit.WornDays + Period.DaysBetween(bond.AppliedOn, day));
        var isWornOut = grades.IsAtLeast(InspectionGrades.PlanReplacement) == true;
        var goesOn = units.Find(u => isWornOut && u.State is (UnitState.Prepared or UnitState.Resting)) ?? worn;

        var kind = await db.UnitKinds.SingleAsync(k => k.Id == goesOn.UnitKindId, cancellation);
        var used = old.Products.Select(p => (Guid.CreateVersion7(), new AppliedProduct(p.ProductId, p.LotId, p.Coats))).ToList();
        var basis = dues.CalculatorFor(
            client,
            kind.BaseMaterialId,
            used.Select(u => (Guid?)u.Item2.ProductId).FirstOrDefault(),
            old.Attachment
        );
        var found = new TakeDown(grades, off.Lift is not null, off.LiftedOn, off.LiftZone, off.RemovedBecause!.Value)
        {
            GradesCopied = false,
        };
        bool? waits = old.Attachment == Attachment.Liquid ? !DemoParameters.DrawDryingCutShort(random, life.Client.Adhesive) : null;
        var made = new NewBond(
            Guid.CreateVersion7(),
            goesOn,
            visit.EndsAt - FromBondToDoor,
            old.Attachment,
            used,
            waits,
            Emergency: goesOn == worn && grades.IsAtLeast(InspectionGrades.Unfit) == true
        );
        db.Bonds.Add(
            visit.RecordRebond(
                Guid.CreateVersion7(),
                (old, worn, found),
                made,
                salon,
                basis.WindowFor(day),
                visit.EndsAt,
                visit.PersonId,
                note: null
            )
        );
        if (goesOn != worn)
            worn.LeaveService(UnitState.Retired, day, "worn out");
    }
}
