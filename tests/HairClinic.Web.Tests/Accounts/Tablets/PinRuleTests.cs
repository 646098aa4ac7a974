using HairClinic.Web.Accounts.Tablets;

namespace HairClinic.Web.Tests.Accounts.Tablets;

public sealed class PinRuleTests
{
    [Theory]
    [InlineData("12345")]
    [InlineData("1234567")]
    [InlineData("12345a")]
    [InlineData("１２３４５６")]
    [InlineData(null)]
    public void It_has_six_digits(string? pin) => Assert.Equal(PinRule.NotSixDigits, PinRule.Fault(pin));

    [Theory]
    [InlineData("123456")]
    [InlineData("654321")]
    [InlineData("890123")]
    [InlineData("456789")]
    [InlineData("123789")]
    [InlineData("321987")]
    public void Runs_are_refused(string pin) => Assert.Equal(PinRule.IsRun, PinRule.Fault(pin));

    [Theory]
    [InlineData("111111")]
    [InlineData("121212")]
    [InlineData("112211")]
    [InlineData("583583")]
    [InlineData("585858")]
    [InlineData("583385")]
    [InlineData("114477")]
    public void Repeats_and_mirrors_are_refused(string pin) => Assert.Equal(PinRule.Repeats, PinRule.Fault(pin));

    [Theory]
    [InlineData("198473")]
    [InlineData("201507")]
    [InlineData("731984")]
    [InlineData("140785")]
    [InlineData("071485")]
    [InlineData("310112")]
    public void Years_and_dates_are_refused(string pin) => Assert.Equal(PinRule.IsDate, PinRule.Fault(pin));

    [Theory]
    [InlineData("482913")]
    [InlineData("593024")]
    [InlineData("718203")]
    [InlineData("904617")]
    public void Others_will_do(string pin) => Assert.Null(PinRule.Fault(pin));

    [Fact]
    public void Most_PINs_are_left_to_choose_from() =>
        // Five tries among so many: the guess of one in 100,000 and less that six digits are for.
        Assert.True(Enumerable.Range(0, 1_000_000).Count(n => PinRule.Fault($"{n:000000}") is null) > 900_000);
}
