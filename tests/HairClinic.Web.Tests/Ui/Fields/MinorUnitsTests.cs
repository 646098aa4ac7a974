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
    [InlineData("45,5", 2, "en-GB", 4550)]
    [InlineData("45", 2, "en-GB", 4500)]
    [InlineData("1200", 0, "ja-JP", 1200)]
    [InlineData("1.234", 3, "en-GB", 1234)]
    [InlineData("-3.20", 2, "en-GB", -320)]
    [InlineData("1250", 2, "es-ES", 125_000)]
    [InlineData("1250.00", 2, "es-ES", 125_000)]
    [InlineData("1 250,00", 2, "en-GB", 125_000)]
    [InlineData("1\u202F250,00", 2, "fr-FR", 125_000)]
    [InlineData("1.250,00", 2, "en-GB", 125_000)]
    [InlineData("1,250.00", 2, "es-ES", 125_000)]
    [InlineData("1'250.00", 2, "de-CH", 125_000)]
    [InlineData("1,250,000", 2, "en-GB", 125_000_000)]
    [InlineData("1.250", 0, "en-GB", 1250)]
    [InlineData("1.000", 0, "en-GB", 1000)]
    public void An_amount_that_can_be_read_in_one_way_is_read(string typed, int decimals, string culture, long expected) =>
        Assert.Equal(new(expected, null, null), MinorUnits.Read(typed, decimals, CultureInfo.GetCultureInfo(culture)));

    [Theory]
    [InlineData("1.250", 2, "en-GB", 125_000, 125)]
    [InlineData("1.250", 2, "es-ES", 125_000, 125)]
    [InlineData("1,250", 2, "en-GB", 125_000, 125)]
    [InlineData("-1.250", 2, "en-GB", -125_000, -125)]
    [InlineData("1,250", 3, "en-GB", 1_250_000, 1250)]
    public void Of_two_readings_neither_is_taken(string typed, int decimals, string culture, long thousands, long fraction) =>
        Assert.Equal(new(null, thousands, fraction), MinorUnits.Read(typed, decimals, CultureInfo.GetCultureInfo(culture)));

    [Theory]
    [InlineData("45.505", 2)]
    [InlineData("0.5", 0)]
    [InlineData("1,25,000", 2)]
    [InlineData("1.250.5", 2)]
    [InlineData("5.", 2)]
    [InlineData("dear", 2)]
    [InlineData("", 2)]
    [InlineData("99999999999999999", 2)]
    public void What_cannot_be_told_exactly_is_refused(string typed, int decimals) =>
        Assert.Equal(default, MinorUnits.Read(typed, decimals, CultureInfo.GetCultureInfo("en-GB")));

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
                    return MinorUnits.Read(MinorUnits.Write(amount, decimals, culture)!, decimals, culture).Only == amount;
                }
            );
}
