namespace HairClinic.Web.Privacy;

/// <summary>When salons are empty: from two to five in the morning there.</summary>
public static class QuietHours
{
    /// <param name="zone">The salon's time zone; null counts as UTC.</param>
    public static bool Cover(Instant now, string? zone) => now.InZone(DateTimeZoneProviders.Tzdb[zone ?? "UTC"]).Hour is >= 2 and < 5;
}
