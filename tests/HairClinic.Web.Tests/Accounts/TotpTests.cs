using System.Text;
using HairClinic.Web.Accounts;
using NodaTime;
using OtpNet;
using Totp = HairClinic.Web.Accounts.Totp;

namespace HairClinic.Web.Tests.Accounts;

public sealed class TotpTests
{
    // RFC 6238, appendix B, the rows for SHA-1.
    [Theory]
    [InlineData(59, "94287082")]
    [InlineData(1111111109, "07081804")]
    [InlineData(1111111111, "14050471")]
    [InlineData(1234567890, "89005924")]
    [InlineData(2000000000, "69279037")]
    [InlineData(20000000000, "65353130")]
    public void Codes_are_those_of_the_standard(long seconds, string code)
    {
        var secret = Encoding.ASCII.GetBytes("12345678901234567890");
        var step = Totp.StepAt(Instant.FromUnixTimeSeconds(seconds));

        Assert.Equal(code, Totp.Code(secret, step, digits: 8));
        // Six digits are the last six of the same number.
        Assert.Equal(code[2..], Totp.Code(secret, step));
    }

    [Fact]
    public void An_independent_library_reads_our_secrets_and_makes_the_same_codes()
    {
        for (var i = 0; i < 50; i++)
        {
            var secret = Totp.NewSecret();
            var now = Instant.FromUtc(2027, 2, 3, 10, 0).Plus(Duration.FromSeconds(7919L * i));

            // Otp.NET.
            var theirs = new OtpNet.Totp(Base32Encoding.ToBytes(secret)).ComputeTotp(now.ToDateTimeUtc());

            Assert.Equal(Totp.StepAt(now), Totp.Match(secret, theirs, now));
            Assert.Equal(Base32Encoding.ToBytes(secret), Totp.FromBase32(secret));
        }
    }

    [Theory]
    [InlineData(-30, true)]
    [InlineData(30, true)]
    [InlineData(-60, false)]
    [InlineData(60, false)]
    public void A_phone_may_be_one_step_off(int seconds, bool opens)
    {
        var secret = Totp.NewSecret();
        var now = Instant.FromUtc(2027, 2, 3, 10, 0);
        var code = new OtpNet.Totp(Base32Encoding.ToBytes(secret)).ComputeTotp(now.Plus(Duration.FromSeconds(seconds)).ToDateTimeUtc());

        Assert.Equal(opens, Totp.Match(secret, code, now) is not null);
    }

    // RFC 4648, section 10.
    [Theory]
    [InlineData("f", "MY")]
    [InlineData("fo", "MZXQ")]
    [InlineData("foo", "MZXW6")]
    [InlineData("foob", "MZXW6YQ")]
    [InlineData("fooba", "MZXW6YTB")]
    [InlineData("foobar", "MZXW6YTBOI")]
    public void Letters_of_a_secret_are_those_of_the_standard(string text, string letters) =>
        Assert.Equal(letters, Totp.Base32(Encoding.ASCII.GetBytes(text)));
}
