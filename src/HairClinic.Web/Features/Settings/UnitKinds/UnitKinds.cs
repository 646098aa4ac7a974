using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Settings;

/// <summary>Bases with their life, the kinds of unit made on them, and the workshops that make them.</summary>
public sealed class UnitKinds(ClinicDbFactory databases)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var bases = await db
            .BaseMaterials.AsNoTracking()
            .OrderBy(b => b.Retired)
            .ThenBy(b => b.Name)
            .Select(b => new BaseRow(b.Id, b.Name, b.LifeFromDays, b.LifeToDays, b.Retired))
            .ToListAsync(cancellation);
        var kinds = await db
            .UnitKinds.AsNoTracking()
            .OrderBy(k => k.Retired)
            .ThenBy(k => k.Name)
            .Select(k => new KindRow(
                k.Id,
                k.Name,
                db.BaseMaterials.Where(b => b.Id == k.BaseMaterialId).Select(b => b.Name).First(),
                db.Workshops.Where(w => w.Id == k.WorkshopId).Select(w => w.Name).FirstOrDefault(),
                k.Spares,
                k.Retired
            ))
            .ToListAsync(cancellation);
        var workshops = await db
            .Workshops.AsNoTracking()
            .OrderBy(w => w.Retired)
            .ThenBy(w => w.Name)
            .Select(w => new WorkshopRow(w.Id, w.Name, db.WorkshopClosures.Count(c => c.WorkshopId == w.Id), w.Retired))
            .ToListAsync(cancellation);
        return new Screen(bases, kinds, workshops);
    }

    public sealed record Screen(IReadOnlyList<BaseRow> Bases, IReadOnlyList<KindRow> Kinds, IReadOnlyList<WorkshopRow> Workshops);

    public sealed record BaseRow(Guid Id, string Name, int LifeFromDays, int LifeToDays, bool Retired);

    /// <param name="Spares">Always ready beside the one worn; 0 where the chance of a gap decides.</param>
    public sealed record KindRow(Guid Id, string Name, string Base, string? Workshop, int Spares, bool Retired);

    public sealed record WorkshopRow(Guid Id, string Name, int Closures, bool Retired);
}
