using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Tests.Wear.Curves;

public sealed class BinomialProportionTests
{
    // Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998), 857–872, Table I, method 3;
    // quoted from memory and worked anew from Wilson's formula.
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void The_interval_is_Wilsons(int count, int of, double lower, double upper)
    {
        var seen = new BinomialProportion(count, of);

        Assert.Equal(lower, seen.Lower, 0.00005);
        Assert.Equal(upper, seen.Upper, 0.00005);
    }

    [Fact]
    public void Of_nothing_nothing_is_known() =>
        Assert.Equal((0.0, 1.0), (new BinomialProportion(0, 0).Lower, new BinomialProportion(0, 0).Upper));
}
