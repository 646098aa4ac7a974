using HairClinic.Web.Data;

namespace HairClinic.Web.Features.MyHair;

/// <summary>The salon a client rings: their home salon.</summary>
public sealed class OwnSalon(ClinicDbFactory databases)
{
    /// <returns>Nulls when the client is no longer there.</returns>
    public async Task<(string? Name, string? Phone)> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var found = await (
            from client in db.Clients
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            select new { salon.Name, salon.Phone }
        ).FirstOrDefaultAsync(cancellation);
        return (found?.Name, found?.Phone);
    }
}
