using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Settings;

/// <summary>How long bonds are expected to hold, by base, adhesive and attachment.</summary>
public sealed class HoldWindows(ClinicDbFactory databases)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var rows = await db
            .HoldWindowRules.AsNoTracking()
            .Select(r => new
            {
                r.Id,
                Base = db.BaseMaterials.Where(b => b.Id == r.BaseMaterialId).Select(b => b.Name).FirstOrDefault(),
                Adhesive = db.Products.Where(p => p.Id == r.AdhesiveId).Select(p => p.Name).FirstOrDefault(),
                r.Attachment,
                r.EarliestWeeks,
                r.LatestWeeks,
            })
            .ToListAsync(cancellation);
        return new Screen([
            .. rows.OrderBy(r => (r.Base is null ? 0 : 4) + (r.Adhesive is null ? 0 : 2) + (r.Attachment is null ? 0 : 1))
                .ThenBy(r => r.Base, StringComparer.CurrentCulture)
                .ThenBy(r => r.Adhesive, StringComparer.CurrentCulture)
                .Select(r => new Row(
                    r.Id,
                    r.Base,
                    r.Adhesive,
                    r.Attachment,
                    r.EarliestWeeks,
                    r.LatestWeeks,
                    new HoldPrior(new HoldWindow(r.EarliestWeeks, r.LatestWeeks)).TargetDays
                )),
        ]);
    }

    public sealed record Screen(IReadOnlyList<Row> Rows);

    /// <param name="Base">Null for any, as with the next two.</param>
    /// <param name="TargetDay">The day to aim a rebond at, counted from the bond.</param>
    public sealed record Row(
        Guid Id,
        string? Base,
        string? Adhesive,
        Attachment? Attachment,
        int EarliestWeeks,
        int LatestWeeks,
        int TargetDay
    );
}
