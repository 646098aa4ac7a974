using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class SpareRuleTests
{
    [Theory]
    [InlineData(0, 0, 0, 0)]
    [InlineData(0, 1, 0, 0)]
    // Only what is worn: one is missing, or two.
    [InlineData(1, 1, 0, 1)]
    [InlineData(2, 1, 0, 2)]
    // What is on order counts as ready to come.
    [InlineData(1, 1, 1, 0)]
    [InlineData(1, 2, 0, 0)]
    [InlineData(2, 1, 1, 1)]
    [InlineData(2, 2, 1, 0)]
    [InlineData(1, 3, 1, 0)]
    // Nothing left at all: what is to be worn, and its spare.
    [InlineData(1, 0, 0, 2)]
    public void So_many_are_missing(int spares, int inHouse, int inFlight, int missing) =>
        Assert.Equal(missing, SpareRule.Missing(spares, inHouse, inFlight));

    [Fact]
    public void No_more_than_two_spares_are_kept()
    {
        var kind = new UnitKind(Guid.NewGuid(), "Lace", Guid.NewGuid(), null);
        kind.KeepSpares(2);

        Assert.Equal(2, kind.Spares);
        Refused.Saying("Keep no spare, one or two.", () => kind.KeepSpares(3));
        Refused.Saying("Keep no spare, one or two.", () => kind.KeepSpares(-1));
    }
}
