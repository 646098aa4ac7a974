using NodaTime;

namespace HairClinic.Web.Features.Wear;

/// <summary>A salon, and the day it is there.</summary>
public sealed record SalonDay(Guid Id, string Name, DateTimeZone Zone, LocalDate Today)
{
    public static SalonDay At(Guid id, string name, string zoneId, Instant now)
    {
        var zone = DateTimeZoneProviders.Tzdb[zoneId];
        return new(id, name, zone, now.InZone(zone).Date);
    }
}
