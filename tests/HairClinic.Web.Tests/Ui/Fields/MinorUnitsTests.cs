using System.Globalization;
using CsCheck;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Tests.Ui.Fields;

// Digits after the point per ISO 4217: 2 for most, 0 for JPY, 3 for KWD.
public sealed class MinorUnitsTests
{
    [Theory]
    [InlineData("45.50", 2, "en-GB", 4550)]
    [InlineData("45,50", 2, "de-DE", 4550)]
    [InlineData("45.50", 2, "de-DE", 4550)]
    [InlineData("45", 2, "en-GB", 4500)]
    [InlineData("1200", 0, "ja-JP", 1200)]
    [InlineData("1.234", 3, "en-GB", 1234)]
    [InlineData("-3.20", 2, "en-GB", -320)]
    public void An_amount_is_read_as_the_reader_writes_it(string typed, int decimals, string culture, long expected)
    {
        Assert.True(MinorUnits.TryRead(typed, decimals, CultureInfo.GetCultureInfo(culture), out var minor));
        Assert.Equal(expected, minor);
    }

    [Theory]
    [InlineData("45.505", 2)]
    [InlineData("0.5", 0)]
    [InlineData("1,250", 2)]
    [InlineData("dear", 2)]
    [InlineData("99999999999999999", 2)]
    public void What_cannot_be_told_exactly_is_refused(string typed, int decimals) =>
        Assert.False(MinorUnits.TryRead(typed, decimals, CultureInfo.GetCultureInfo("en-GB"), out _));

    [Fact]
    public void Whatever_is_written_is_read_back_the_same() =>
        Gen.Select(
                Gen.Long[-99_999_999_999, 99_999_999_999],
                Gen.Int[0, 3],
                Gen.OneOf(new[] { "en-GB", "de-DE", "fr-FR", "sv-SE", "ar-EG" }.Select(Gen.Const).ToArray())
            )
            .Sample(
                (amount, decimals, name) =>
                {
                    var culture = CultureInfo.GetCultureInfo(name);
                    return MinorUnits.TryRead(MinorUnits.Write(amount, decimals, culture)!, decimals, culture, out var back)
                        && back == amount;
                }
            );
}
