namespace HairClinic.Web.Data;

public static class ClockExtensions
{
    /// <summary>The day it is now in an IANA time zone, such as a salon's.</summary>
    public static LocalDate Today(this IClock clock, string zone) =>
        clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[zone]).Date;
}
