using HairClinic.Web.Accounts;
using NodaTime;
using OtpNet;

namespace HairClinic.Web.Tests.Accounts;

public sealed class AppCodesTests
{
    // RFC 6238, appendix B, the rows for SHA-1; six digits are the last six of the same number. The secret is its twenty ASCII digits in base 32.
    [Theory]
    [InlineData(59, "287082", 0x1)]
    [InlineData(1111111109, "081804", 0x23523EC)]
    [InlineData(1111111111, "050471", 0x23523ED)]
    [InlineData(1234567890, "005924", 0x273EF07)]
    [InlineData(2000000000, "279037", 0x3F940AA)]
    [InlineData(20000000000, "353130", 0x27BC86AA)]
    public void Codes_are_those_of_the_standard_and_belong_to_its_steps(long seconds, string code, long step) =>
        Assert.Equal(step, AppCodes.Match("GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ", code, Instant.FromUnixTimeSeconds(seconds)));

    [Theory]
    [InlineData(-60, false)]
    [InlineData(-30, true)]
    [InlineData(0, true)]
    [InlineData(30, true)]
    [InlineData(60, false)]
    public void A_phone_may_be_one_step_off(int seconds, bool opens)
    {
        var secret = AppCodes.NewSecret();
        var now = Instant.FromUtc(2027, 2, 3, 10, 0);
        var shown = now.Plus(Duration.FromSeconds(seconds));
        var code = new Totp(Base32Encoding.ToBytes(secret)).ComputeTotp(shown.ToDateTimeUtc());

        Assert.Equal(opens ? shown.ToUnixTimeSeconds() / 30 : null, AppCodes.Match(secret, $"{code[..3]} {code[3..]}", now));
    }

    [Theory]
    [InlineData("")]
    [InlineData("12345")]
    [InlineData("1234567")]
    [InlineData("no digits")]
    public void What_is_no_code_matches_nothing(string typed) =>
        Assert.Null(AppCodes.Match(AppCodes.NewSecret(), typed, Instant.FromUtc(2027, 2, 3, 10, 0)));

    [Fact]
    public void A_secret_has_160_bits_and_is_never_the_same()
    {
        Assert.Equal(20, Base32Encoding.ToBytes(AppCodes.NewSecret()).Length);
        Assert.NotEqual(AppCodes.NewSecret(), AppCodes.NewSecret());
    }
}
