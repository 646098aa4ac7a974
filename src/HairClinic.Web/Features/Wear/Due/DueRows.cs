using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Wear;

/// <summary>One page of the list in one round trip: first its keys, in order; then what the screen shows of those few.</summary>
internal static class DueRows
{
    public static Task<List<DueRow>> ReadAsync(
        ClinicDb db,
        IReadOnlyList<SalonLocalDateGroup> days,
        DuePart part,
        DueCursor? after,
        int count,
        CancellationToken cancellation
    )
    {
        var pages = days.SelectMany(day => DueBondQueries.OfDuePart(part, db, day))
            .Where(p => after is null || p.Rank >= after.Rank)
            .Select(p => Ordered(p.Rank == after?.Rank ? After(p.Bonds, after) : p.Bonds, p.Rank).Take(count))
            .ToList();
        var keys =
            pages.Count == 1
                ? pages[0]
                : pages.Aggregate(Queryable.Concat).OrderBy(k => k.Rank).ThenBy(k => k.ClosesOn).ThenBy(k => k.BondId).Take(count);
        return Rows(db, keys, days.Min(d => d.Began)).ToListAsync(cancellation);
    }

    private static IQueryable<DueBondCandidate> After(IQueryable<DueBondCandidate> bonds, DueCursor last) =>
        bonds.Where(b => b.ClosesOn >= last.ClosesOn && (b.ClosesOn > last.ClosesOn || b.BondId > last.BondId));

    private static IQueryable<Key> Ordered(IQueryable<DueBondCandidate> bonds, int rank) =>
        bonds
            .OrderBy(b => b.ClosesOn)
            .ThenBy(b => b.BondId)
            .Select(b => new Key
            {
                Rank = rank,
                ClosesOn = b.ClosesOn,
                BondId = b.BondId,
                AtRisk = b.AtRisk,
            });

    private static IQueryable<DueRow> Rows(ClinicDb db, IQueryable<Key> keys, Instant began)
    {
        var bookings = DueBondQueries.UpcomingBondVisits(db, began);
        return from key in keys
            join bond in db.Bonds.AsNoTracking() on key.BondId equals bond.Id
            join client in db.Clients on bond.ClientId equals client.Id
            // Asked about this bond, not only this client: an equality alone would become a join over everybody's notes and visits.
            from note in db
                .ContactNotes.Where(n => n.ClientId == bond.ClientId && (bond.AppliedAt == null || n.At >= bond.AppliedAt))
                .OrderByDescending(n => n.At)
                .Take(1)
                .DefaultIfEmpty()
            from visit in bookings
                .Where(v => v.ClientId == bond.ClientId && v.Day >= bond.AppliedOn)
                .OrderBy(v => v.StartsAt)
                .Take(1)
                .DefaultIfEmpty()
            orderby key.Rank, key.ClosesOn, key.BondId
            select new DueRow
            {
                BondId = key.BondId,
                Rank = key.Rank,
                ClientId = client.Id,
                SalonId = client.HomeSalonId,
                Code = client.Code,
                Name = client.Name,
                CalledAs = client.CalledAs,
                Phone = client.Phone,
                AppliedOn = bond.AppliedOn,
                OpensOn = bond.OpensOn,
                DueOn = bond.DueOn,
                ClosesOn = bond.ClosesOn,
                Reasons = bond.DueReasons,
                LiftedOn = bond.Lift!.LiftedOn ?? bond.Lift!.LatestOn,
                LiftReportedOn = (LocalDate?)bond.Lift!.ReportedOn,
                LiftZone = (LiftZone?)bond.Lift!.Zone,
                LastContact = note == null ? null : new LastContact(note.Kind, note.At, note.Until, note.Reason),
                Booking = visit == null ? null : new DueBooking(visit.Id, visit.SalonId, visit.StartsAt, visit.Day),
                AtRisk = key.AtRisk,
            };
    }

    private sealed class Key
    {
        public required int Rank { get; init; }
        public required LocalDate ClosesOn { get; init; }
        public required Guid BondId { get; init; }
        public required bool AtRisk { get; init; }
    }
}
