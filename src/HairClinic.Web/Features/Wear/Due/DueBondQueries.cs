using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Wear;

/// <summary>
/// The open bonds of some salons on a day, with the answers that decide each one's part. Everything is asked by keys, dates
/// and equality, so that row security lets the indexes serve; an answer nobody uses costs nothing.
/// </summary>
internal static class DueBondQueries
{
    public static IQueryable<DueBondCandidate> OpenBonds(ClinicDb db, SalonLocalDateGroup day)
    {
        var bookings = UpcomingBondVisits(db, day.Began);
        return from bond in db.Bonds
            join client in db.Clients on bond.ClientId equals client.Id
            where bond.RemovedOn == null && day.Salons.Contains(client.HomeSalonId) && client.MergedIntoId == null && client.LeftOn == null
            select new DueBondCandidate
            {
                BondId = bond.Id,
                OpensOn = bond.OpensOn,
                ClosesOn = bond.ClosesOn,
                Lifted = bond.Lift != null,
                Booked = bookings.Any(v => v.ClientId == bond.ClientId),
                // The last word counts, and only about this bond: what was said about an earlier one is over.
                PutOff =
                    db.ContactNotes.Where(n =>
                            n.ClientId == bond.ClientId
                            && n.Kind == ContactOutcome.PutOff
                            && (bond.AppliedAt == null || n.At >= bond.AppliedAt)
                        )
                        .OrderByDescending(n => n.At)
                        .Select(n => n.Until)
                        .FirstOrDefault() > day.Today,
                AtRisk = db.ReorderPlans.Any(p => p.ClientId == bond.ClientId && p.AtRisk),
                SpareMissing = db.ReorderPlans.Any(p => p.ClientId == bond.ClientId && !p.AtRisk && p.SparesMissing > 0),
            };
    }

    /// <summary>Visits to come that deal with a bond.</summary>
    public static IQueryable<Visit> UpcomingBondVisits(ClinicDb db, Instant since) =>
        from visit in db.Visits
        join kind in db.ServiceKinds on visit.ServiceKindId equals kind.Id
        where visit.StartsAt >= since
        where visit.State == VisitState.Booked || visit.State == VisitState.Arrived || visit.State == VisitState.InChair
        where kind.Purpose == ServicePurpose.Rebond || kind.Purpose == ServicePurpose.FirstFitting || kind.Purpose == ServicePurpose.FixLift
        select visit;

    /// <summary>One part, lifted and others apart: each can be read in the order of an index and left after a page.</summary>
    public static IEnumerable<(int Rank, IQueryable<DueBondCandidate> Bonds)> OfDuePart(DuePart part, ClinicDb db, SalonLocalDateGroup day)
    {
        var (all, today, soon) = (OpenBonds(db, day), day.Today, day.Soon);
        var lifted = all.Where(b => b.Lifted);
        var inWindow = all.Where(b => !b.Lifted && b.OpensOn <= soon);
        var wanted = inWindow.Where(b => !b.Booked && !b.PutOff);
        return part switch
        {
            DuePart.Lifted => [(0, lifted.Where(b => !b.Booked))],
            DuePart.Overdue => [(1, wanted.Where(b => b.ClosesOn < today))],
            DuePart.Open => [(1, wanted.Where(b => b.ClosesOn >= today && b.OpensOn <= today))],
            DuePart.Opening => [(1, wanted.Where(b => b.ClosesOn >= today && b.OpensOn > today))],
            DuePart.Booked => [(0, lifted.Where(b => b.Booked)), (1, inWindow.Where(b => b.Booked))],
            DuePart.PutOff => [(1, inWindow.Where(b => !b.Booked && b.PutOff))],
            _ => [(0, lifted.Where(b => !b.Booked)), (1, wanted)],
        };
    }
}

/// <summary>An open bond with the answers that decide its part.</summary>
internal sealed class DueBondCandidate
{
    public required Guid BondId { get; init; }
    public required LocalDate OpensOn { get; init; }
    public required LocalDate ClosesOn { get; init; }
    public required bool Lifted { get; init; }
    public required bool Booked { get; init; }
    public required bool PutOff { get; init; }
    public required bool AtRisk { get; init; }
    public required bool SpareMissing { get; init; }
}
