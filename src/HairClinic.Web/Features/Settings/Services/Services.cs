using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Settings;

/// <summary>What the practice offers.</summary>
public sealed class Services(ClinicDbFactory databases)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var rows = await db
            .ServiceKinds.AsNoTracking()
            .OrderBy(k => k.Retired)
            .ThenBy(k => k.Name)
            .Select(k => new Row(
                k.Id,
                k.Name,
                k.Purpose,
                k.Steps.Sum(s => s.Minutes),
                k.PriceMinor,
                k.Currency,
                k.Retired,
                db.People.Count(p => !p.Left && p.Skills.Any(s => s.ServiceKindId == k.Id))
            ))
            .ToListAsync(cancellation);
        return new Screen(rows);
    }

    public sealed record Screen(IReadOnlyList<Row> Rows);

    /// <param name="People">How many may do it alone.</param>
    public sealed record Row(
        Guid Id,
        string Name,
        ServicePurpose Purpose,
        int Minutes,
        long? PriceMinor,
        string? Currency,
        bool Retired,
        int People
    );
}
