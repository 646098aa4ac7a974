using HairClinic.Web.Data.Phones;

namespace HairClinic.Web.Tests.Data.Phones;

/// <summary>+44 20 7946 0018 and 01632 960xxx: numbers the British regulator keeps for fiction (from memory).</summary>
public sealed class PhoneNumberingTests
{
    [Theory]
    [InlineData("01632 960007", "+441632960007")]
    [InlineData("(01632) 960-007", "+441632960007")]
    [InlineData("+44 1632 960007", "+441632960007")]
    [InlineData("0044 1632 960007", "+441632960007")]
    [InlineData("+1 212-736-5000", "+12127365000")]
    public void A_number_is_read_in_the_practices_own_country_unless_it_names_another(string typed, string written)
    {
        Assert.Equal(PhoneFault.None, new PhoneNumbering("GB").Read(typed, out var read));
        Assert.Equal(written, read);
    }

    [Theory]
    [InlineData("ring the sister", PhoneFault.NotANumber)]
    [InlineData("01632 9", PhoneFault.DoesNotExist)]
    [InlineData("01632 960007 ext 4", PhoneFault.HasExtension)]
    public void What_cannot_be_rung_is_told_apart(string typed, PhoneFault fault)
    {
        Assert.Equal(fault, new PhoneNumbering("GB").Read(typed, out var read));
        Assert.Empty(read);
    }
}
