using HairClinic.Domain.Practices;

namespace HairClinic.Domain.Tests.Practices;

public sealed class TimeZoneCountryTests
{
    /// <summary>Lines of zone.tab, looked up in the IANA time zone database as Debian installs it (/usr/share/zoneinfo/zone.tab).</summary>
    [Theory]
    [InlineData("Europe/London", "GB")]
    [InlineData("Europe/Guernsey", "GG")]
    [InlineData("America/New_York", "US")]
    [InlineData("America/Toronto", "CA")]
    [InlineData("Europe/Busingen", "DE")]
    [InlineData("Asia/Kolkata", "IN")]
    [InlineData("Pacific/Honolulu", "US")]
    [InlineData("Europe/Oslo", "NO")]
    public void A_zone_lies_in_the_country_that_zone_tab_names(string zone, string country) =>
        Assert.Equal(country, TimeZoneCountry.ForZone(zone));

    /// <summary>Links of the database's file "backward" (from memory).</summary>
    [Theory]
    [InlineData("US/Eastern", "US")]
    [InlineData("Asia/Calcutta", "IN")]
    [InlineData("Europe/Belfast", "GB")]
    public void An_old_name_lies_where_the_new_one_does(string zone, string country) =>
        Assert.Equal(country, TimeZoneCountry.ForZone(zone));

    [Theory]
    [InlineData("Etc/UTC")]
    [InlineData("EST")]
    [InlineData("Europe/Atlantis")]
    [InlineData("")]
    public void What_is_no_place_lies_in_no_country(string zone) => Assert.Null(TimeZoneCountry.ForZone(zone));
}
