using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>Sixty days: common practice, no source.</summary>
public sealed class LapsedClientRuleTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);

    [Theory]
    [InlineData(0, false)]
    [InlineData(60, false)]
    [InlineData(61, true)]
    public void Whoever_wore_nothing_for_more_than_sixty_days_has_left(int daysAgo, bool lapsed) =>
        Assert.Equal(lapsed, LapsedClientRule.HasLapsed(Today.PlusDays(-daysAgo), Today));

    [Fact]
    public void Whoever_never_wore_anything_is_no_wearer() => Assert.True(LapsedClientRule.HasLapsed(null, Today));
}
