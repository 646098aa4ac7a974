using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Tests.Features.Binder.Sheets.Cells;

public sealed class PhoneCellParserTests
{
    // E.164 (ITU-T): at most 15 digits. The numbers are from ranges kept for fiction, recalled from memory; that +44 drops
    // the leading 0 and takes no brackets was looked up.
    [Theory]
    [InlineData("GB", "020 7946 0018", "+442079460018")]
    [InlineData("GB", "(01632) 960123", "+441632960123")]
    [InlineData("GB", "07700 900123", "+447700900123")]
    [InlineData("GB", "+44 (0)20 7946 0018", "+442079460018")]
    [InlineData("GB", "0044 20 7946 0018", "+442079460018")]
    [InlineData("US", "(212) 555-0123", "+12125550123")]
    [InlineData("US", "+44 20 7946 0018", "+442079460018")]
    [InlineData("", "+442079460018", "+442079460018")]
    public void Numbers_as_people_write_them_become_E_164(string region, string text, string expected) =>
        Assert.Equal(expected, new PhoneCellParser(region).Parse(text).Value);

    [Theory]
    [InlineData("GB", "020 7946 001")]
    [InlineData("", "+1234567890123456")]
    [InlineData("", "020 7946 0018")]
    [InlineData("GB", "ring her sister")]
    [InlineData("GB", "020 7946 0018 ext 4")]
    public void What_is_no_number_says_so_with_an_example(string region, string text)
    {
        var reading = new PhoneCellParser(region).Parse(text);
        Assert.Null(reading.Value);
        Assert.Contains(region == "GB" ? "0121 234 5678" : "+44 20 7946 0018", reading.Expected!.ToString());
    }

    [Fact]
    public void A_region_without_a_numbering_plan_is_refused() => Assert.Throws<ArgumentException>(() => new PhoneCellParser("XX"));
}
