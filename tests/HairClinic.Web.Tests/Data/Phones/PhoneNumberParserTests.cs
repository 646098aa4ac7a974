using HairClinic.Web.Data.Phones;

namespace HairClinic.Web.Tests.Data.Phones;

/// <summary>+44 20 7946 0018 and 01632 960xxx: numbers the British regulator keeps for fiction (from memory).</summary>
public sealed class PhoneNumberParserTests
{
    [Theory]
    [InlineData("01632 960007", "+441632960007")]
    [InlineData("(01632) 960-007", "+441632960007")]
    [InlineData("+44 1632 960007", "+441632960007")]
    [InlineData("0044 1632 960007", "+441632960007")]
    [InlineData("+1 212-736-5000", "+12127365000")]
    public void A_number_is_read_in_the_practices_own_country_unless_it_names_another(string typed, string written)
    {
        Assert.Equal(PhoneFault.None, new PhoneNumberParser("GB").Parse(typed, out var read));
        Assert.Equal(written, read);
    }

    /// <summary>555-0100 to 555-0199 are kept for fiction in North America (from memory).</summary>
    [Theory]
    [InlineData("America/New_York", "518 555 0146", "+15185550146")]
    [InlineData("America/New_York", "5185550146", "+15185550146")]
    [InlineData("America/New_York", "(518) 555-0146", "+15185550146")]
    [InlineData("America/New_York", "011 44 20 7946 0018", "+442079460018")]
    [InlineData("Europe/London", "020 7946 0018", "+442079460018")]
    [InlineData("Europe/London", "00 1 518 555 0146", "+15185550146")]
    public void A_number_is_read_in_the_country_of_the_salons_time_zone(string zone, string typed, string written)
    {
        Assert.Equal(PhoneFault.None, PhoneNumberParser.ForZone(zone, "ES").Parse(typed, out var read));
        Assert.Equal(written, read);
    }

    [Theory]
    [InlineData("Europe/Madrid", "GB", "ES")]
    [InlineData("Etc/UTC", "GB", "GB")]
    [InlineData(null, "GB", "GB")]
    // Nobody numbers phones in Antarctica alone: its stations have their own countries' numbers.
    [InlineData("Antarctica/Troll", "NO", "NO")]
    [InlineData("Antarctica/Troll", "AQ", "")]
    public void A_zone_without_a_country_or_numbering_plan_leaves_it_to_the_practices(string? zone, string practice, string region) =>
        Assert.Equal(region, PhoneNumberParser.RegionForZone(zone, practice));

    [Theory]
    [InlineData("US", "(201) 555-0123")]
    [InlineData("GB", "0121 234 5678")]
    [InlineData("", "+44 20 7946 0018")]
    public void The_example_is_written_as_people_there_write_it_and_can_be_read(string region, string example)
    {
        Assert.Equal(example, new PhoneNumberParser(region).Example());
        Assert.Equal(PhoneFault.None, new PhoneNumberParser(region).Parse(example, out _));
    }

    [Theory]
    [InlineData("ring the sister", PhoneFault.NotANumber)]
    [InlineData("01632 9", PhoneFault.DoesNotExist)]
    [InlineData("01632 960007 ext 4", PhoneFault.HasExtension)]
    public void What_cannot_be_rung_is_told_apart(string typed, PhoneFault fault)
    {
        Assert.Equal(fault, new PhoneNumberParser("GB").Parse(typed, out var read));
        Assert.Empty(read);
    }
}
