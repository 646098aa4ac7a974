using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear.Lifetimes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Learning;

/// <summary>Gathers units as spells of life: worn days until an inspection found them worn out.</summary>
public static class LifeSpells
{
    /// <param name="clientIds">Null for every unit that was ever bonded.</param>
    public static async Task<List<LifeSpell>> ReadAsync(
        ClinicDb db,
        LocalDate today,
        IReadOnlyCollection<Guid>? clientIds,
        CancellationToken cancellation
    )
    {
        var kinds = await KindsAsync(db, cancellation);
        var units = await db
            .HairSystems.AsNoTracking()
            .Include(u => u.Repairs)
            .Where(u => clientIds == null || u.ClientId != null && clientIds.Contains(u.ClientId.Value))
            .ToListAsync(cancellation);
        var bonds = (
            await db
                .Bonds.Where(b => clientIds == null || clientIds.Contains(b.ClientId))
                .Select(b => new WornStretch(b.HairSystemId, b.AppliedOn, b.RemovedOn))
                .ToListAsync(cancellation)
        ).ToLookup(b => b.UnitId);
        var looks = (
            await (
                from record in db.VisitRecords
                where record.RemovedUnitId != null
                join visit in db.Visits on record.VisitId equals visit.Id
                where clientIds == null || clientIds.Contains(visit.ClientId)
                orderby visit.Day
                select new
                {
                    UnitId = record.RemovedUnitId!.Value,
                    visit.Day,
                    record.Grades,
                }
            ).ToListAsync(cancellation)
        ).ToLookup(l => l.UnitId, l => (l.Day, l.Grades.WorstStructural));
        var habits = await HabitBook.LoadAsync(db, clientIds, cancellation);
        return
        [
            .. units.Where(u => bonds.Contains(u.Id)).Select(u => Of(u, kinds[u.UnitKindId], [.. bonds[u.Id]], looks[u.Id], habits, today)),
        ];
    }

    public static async Task<Dictionary<Guid, UnitSort>> KindsAsync(ClinicDb db, CancellationToken cancellation) =>
        await (
            from kind in db.UnitKinds
            join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
            select new UnitSort(
                kind.Id,
                kind.Name,
                material.Id,
                kind.WorkshopId,
                material.LifeFromDays,
                material.LifeToDays,
                kind.LeadHalfDays,
                kind.LeadNineInTenDays
            )
        ).ToDictionaryAsync(k => k.Id, cancellation);

    /// <summary>What bears on a unit's life: its base, who made it, and the client's habits.</summary>
    public static IReadOnlyList<WearColumn> ColumnsOf(UnitSort sort, Guid? clientId, LocalDate on, HabitBook habits)
    {
        var columns = new List<WearColumn> { WearColumn.Base(sort.BaseMaterialId) };
        if (sort.WorkshopId is { } workshop)
            columns.Add(WearColumn.Workshop(workshop));
        if (clientId is { } client)
            columns.AddRange(habits.ForLife(client, on));
        return columns;
    }

    private static LifeSpell Of(
        HairSystem unit,
        UnitSort sort,
        IReadOnlyList<WornStretch> stretches,
        IEnumerable<(LocalDate Day, int? Grade)> looks,
        HabitBook habits,
        LocalDate today
    )
    {
        var seen = looks.Select(l => ((double)WornStretch.WornBy(stretches, l.Day), l.Grade)).ToArray();
        var worn = WornStretch.WornBy(stretches, today);
        var spell = UnitLife.Of(seen, worn, retired: unit.State == UnitState.Retired);
        return new LifeSpell(
            unit.Id,
            unit.UnitKindId,
            sort.BaseMaterialId,
            sort.WorkshopId,
            worn,
            WornOut: Array.Exists(seen, s => s.Grade >= InspectionGrades.PlanReplacement),
            unit.ClientId,
            spell,
            sort.Life(),
            ColumnsOf(sort, unit.ClientId, stretches.Min(s => s.From), habits)
        );
    }
}
