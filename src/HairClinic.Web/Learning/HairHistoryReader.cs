using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Reads what clients of some salons had on their heads and in house.</summary>
public static class HairHistoryReader
{
    public static async Task<List<ClientHairHistory>> ReadForSalonsAsync(
        ClinicDb db,
        IReadOnlyCollection<Guid> salons,
        CancellationToken cancellation
    )
    {
        var clients = await db
            .Clients.AsNoTracking()
            .Where(c => salons.Contains(c.HomeSalonId) && c.MergedIntoId == null && c.ErasedAt == null)
            .Select(c => new
            {
                c.Id,
                c.HomeSalonId,
                c.LeftOn,
            })
            .ToListAsync(cancellation);
        var bonds = await db
            .Bonds.AsNoTracking()
            .Select(b => new
            {
                b.ClientId,
                b.HairSystemId,
                b.AppliedOn,
                b.RemovedOn,
            })
            .ToListAsync(cancellation);
        var worn = bonds
            .GroupBy(b => b.HairSystemId)
            .ToDictionary(g => g.Key, g => (g.Min(b => b.AppliedOn), g.All(b => b.RemovedOn != null) ? g.Max(b => b.RemovedOn) : null));
        var units = await UnitsAsync(db, worn, cancellation);
        var heads = bonds.ToLookup(b => b.ClientId, b => (b.AppliedOn, b.RemovedOn));
        return
        [
            .. clients.Select(c => new ClientHairHistory(
                c.Id,
                c.HomeSalonId,
                new HairHistory([.. heads[c.Id]], [.. units[c.Id].Select(u => u.Availability)], c.LeftOn)
            )
            {
                Units = [.. units[c.Id]],
            }),
        ];
    }

    private static async Task<ILookup<Guid, (Guid UnitId, UnitAvailability Availability)>> UnitsAsync(
        ClinicDb db,
        Dictionary<Guid, (LocalDate First, LocalDate? Last)> worn,
        CancellationToken cancellation
    )
    {
        var preparation = await db.PracticeSettings.Select(p => p.PreparationDays).SingleAsync(cancellation);
        var leads = await db.UnitKinds.ToDictionaryAsync(k => k.Id, k => k.LeadNineInTenDays, cancellation);
        var wornOut = await WornOutAsync(db, cancellation);
        var units = await db
            .HairSystems.AsNoTracking()
            .Where(u => u.ClientId != null && u.State != UnitState.Specified)
            .Select(u => new
            {
                u.Id,
                ClientId = u.ClientId!.Value,
                u.UnitKindId,
                u.State,
                u.Dates,
                Promised = u.Promises.Where(p => p.Number == 1).Select(p => (LocalDate?)p.PromisedFor).FirstOrDefault(),
            })
            .ToListAsync(cancellation);
        return units.ToLookup(
            u => u.ClientId,
            u =>
                (
                    u.Id,
                    UnitAvailability.FromRecords(
                        u.State,
                        u.Dates,
                        u.Promised,
                        worn.TryGetValue(u.Id, out var days) ? days : null,
                        wornOut.Contains(u.Id),
                        leads[u.UnitKindId] + preparation
                    )
                )
        );
    }

    // Of units that left service but may still be about, those an inspection found worn out.
    private static async Task<HashSet<Guid>> WornOutAsync(ClinicDb db, CancellationToken cancellation)
    {
        var looks = await (
            from unit in db.HairSystems
            where unit.State == UnitState.EmergencySpare || unit.State == UnitState.ReturnedToClient
            join record in db.VisitRecords on unit.Id equals record.RemovedUnitId
            select new { unit.Id, record.Grades }
        ).ToListAsync(cancellation);
        return [.. looks.Where(l => l.Grades.IsAtLeast(InspectionGrades.PlanReplacement) == true).Select(l => l.Id)];
    }
}

/// <summary>A client with what was on their head and in house.</summary>
public sealed record ClientHairHistory(Guid Id, Guid SalonId, HairHistory Hair)
{
    /// <summary>Those of the history, by unit.</summary>
    public required IReadOnlyList<(Guid UnitId, UnitAvailability Availability)> Units { get; init; }
}
