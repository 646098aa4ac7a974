using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Gathers units as spells of life: worn days until an inspection found them worn out.</summary>
public static class LifeSpells
{
    /// <param name="clientIds">Null for every unit that was ever bonded.</param>
    public static async Task<List<LifeSpell>> ReadAsync(
        ClinicDb db,
        LocalDate today,
        IReadOnlyCollection<Guid>? clientIds,
        CancellationToken cancellation
    ) => [.. (await LifeFacts.LoadAsync(db, clientIds, cancellation)).All(await KindsAsync(db, cancellation), today)];

    public static Task<Dictionary<Guid, UnitKindTerms>> KindsAsync(ClinicDb db, CancellationToken cancellation) =>
        (
            from kind in db.UnitKinds
            join material in db.BaseMaterials on kind.BaseMaterialId equals material.Id
            select new UnitKindTerms(
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
}
