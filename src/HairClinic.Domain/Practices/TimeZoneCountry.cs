using NodaTime.TimeZones;

namespace HairClinic.Domain.Practices;

/// <summary>The country a time zone lies in, by the table zone.tab of the IANA time zone database.</summary>
/// <remarks>
/// The table names each zone for one country: Europe/Guernsey is Guernsey's, though its clocks are London's. A name it does not have is
/// looked up under the one it became (US/Eastern is America/New_York). Abbreviations and Etc/ lie nowhere: EST has become a
/// link to Panama's zone, and nobody who chose it meant Panama.
/// </remarks>
public static class TimeZoneCountry
{
    private static readonly Dictionary<string, string> Countries = TzdbDateTimeZoneSource.Default.ZoneLocations!.ToDictionary(
        place => place.ZoneId,
        place => place.CountryCode
    );

    /// <param name="zone">An IANA id such as Europe/London.</param>
    /// <returns>Two capital letters (ISO 3166); null where the zone lies in no country.</returns>
    public static string? ForZone(string zone)
    {
        if (Countries.TryGetValue(zone, out var country))
            return country;
        var isPlace = zone.Contains('/', StringComparison.Ordinal) && !zone.StartsWith("Etc/", StringComparison.Ordinal);
        return isPlace && TzdbDateTimeZoneSource.Default.CanonicalIdMap.TryGetValue(zone, out var now)
            ? Countries.GetValueOrDefault(now)
            : null;
    }
}
