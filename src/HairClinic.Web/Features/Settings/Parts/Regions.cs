using HairClinic.Web.Language;
using NodaTime.TimeZones;

namespace HairClinic.Web.Features.Settings;

/// <summary>Countries with their zones and money, from the IANA database and the machine's locale data.</summary>
public static class Regions
{
    private static readonly IReadOnlyList<TzdbZoneLocation> Places = [.. TzdbDateTimeZoneSource.Default.ZoneLocations!];

    /// <summary>ISO 3166 codes and names of all countries that have a time zone.</summary>
    public static readonly IReadOnlyList<(string Value, string Text)> All =
    [
        .. Places.Select(p => (p.CountryCode, p.CountryName)).Distinct().OrderBy(c => c.CountryName, StringComparer.Ordinal),
    ];

    /// <summary>Languages and formats the screens can be shown in.</summary>
    public static readonly IReadOnlyList<(string Value, string Text)> Cultures =
    [
        .. Languages.All.Select(l => (l.Code, CultureInfo.GetCultureInfo(l.Code).NativeName)),
    ];

    /// <summary>A zone of the country to begin with; the first the database names.</summary>
    public static string ZoneOf(string region) => Places.FirstOrDefault(p => p.CountryCode == region)?.ZoneId ?? "Etc/UTC";

    public static string CurrencyOf(string region)
    {
        try
        {
            return new RegionInfo(region).ISOCurrencySymbol;
        }
        catch (ArgumentException)
        {
            return "";
        }
    }

    /// <summary>Zones whose name or country holds the text, at most a dozen.</summary>
    public static IEnumerable<TzdbZoneLocation> FindZones(string text)
    {
        var wanted = text.Replace(' ', '_');
        return Places
            .Where(p =>
                p.ZoneId.Contains(wanted, StringComparison.OrdinalIgnoreCase)
                || p.CountryName.Contains(text, StringComparison.OrdinalIgnoreCase)
            )
            .OrderByDescending(p => p.ZoneId.Contains("/" + wanted, StringComparison.OrdinalIgnoreCase))
            .ThenBy(p => p.ZoneId, StringComparer.Ordinal)
            .Take(12);
    }
}
