using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Settings;

/// <summary>Everything that touches skin, base or hair, with the lots that are open.</summary>
public sealed class Products(ClinicDbFactory databases)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var rows = await db
            .Products.AsNoTracking()
            .OrderBy(p => p.Retired)
            .ThenBy(p => p.Kind)
            .ThenBy(p => p.Name)
            .Select(p => new Row(
                p.Id,
                p.Name,
                p.Kind,
                p.Chemistry,
                p.LabelCureHours,
                p.Retired,
                p.Lots.Count(l => !l.Finished),
                p.Lots.Where(l => !l.Finished).Min(l => l.ExpiresOn)
            ))
            .ToListAsync(cancellation);
        return new Screen(rows);
    }

    public sealed record Screen(IReadOnlyList<Row> Rows);

    /// <param name="NextExpiry">Of the lots that are open.</param>
    public sealed record Row(
        Guid Id,
        string Name,
        ProductKind Kind,
        string? Chemistry,
        int? LabelCureHours,
        bool Retired,
        int OpenLots,
        LocalDate? NextExpiry
    );
}
