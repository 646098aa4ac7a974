using HairClinic.Web.Data;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client's home salon: whom they ring, and by whose clock their days are told.</summary>
public sealed class OwnSalonReader(ClinicDbFactory databases)
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

    /// <summary>For what is confided, asked before anything is read past the client's fence.</summary>
    /// <returns>Null when the client is no longer there, or their address is not confirmed.</returns>
    public static async Task<DateTimeZone?> ZoneIfConfirmedAsync(ClinicDb db, Guid client, CancellationToken cancellation)
    {
        if (!await db.MayReadConfidentialAsync(cancellation))
            return null;
        var zones = from c in db.Clients where c.Id == client join salon in db.Salons on c.HomeSalonId equals salon.Id select salon.Zone;
        return await zones.SingleOrDefaultAsync(cancellation) is { } zone ? DateTimeZoneProviders.Tzdb[zone] : null;
    }
}
