using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.MyHair;

/// <summary>The clock a client's days are told by: their home salon's.</summary>
internal static class OwnZone
{
    /// <returns>Null when the client is no longer there.</returns>
    public static async Task<DateTimeZone?> OfAsync(ClinicDb db, Guid client, CancellationToken cancellation) =>
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
