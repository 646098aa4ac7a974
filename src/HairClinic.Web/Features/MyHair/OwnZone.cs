using HairClinic.Web.Data;

namespace HairClinic.Web.Features.MyHair;

/// <summary>The clock a client's days are told by: their home salon's.</summary>
internal static class OwnZone
{
    /// <summary>For what is confided, asked before anything is read past the client's fence.</summary>
    /// <returns>Null when the client is no longer there, or their address is not confirmed.</returns>
    public static async Task<DateTimeZone?> ConfirmedAsync(ClinicDb db, Guid client, CancellationToken cancellation) =>
        await db.OpensAllAsync(cancellation) ? await FindAsync(db, client, cancellation) : null;

    private static async Task<DateTimeZone?> FindAsync(ClinicDb db, Guid client, CancellationToken cancellation) =>
        await (
            from c in db.Clients
            where c.Id == client
            join salon in db.Salons on c.HomeSalonId equals salon.Id
            select salon.Zone
        ).SingleOrDefaultAsync(cancellation)
            is { } zone
            ? DateTimeZoneProviders.Tzdb[zone]
            : null;
}
