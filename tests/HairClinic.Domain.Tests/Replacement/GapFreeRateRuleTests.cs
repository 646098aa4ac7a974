using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.Tests.Replacement;

public sealed class GapFreeRateRuleTests
{
    [Theory]
    // A book brought in last month: 58 clients, 41 months of all of them together.
    [InlineData(58, 1248, false)]
    [InlineData(58, 365 * 58, true)]
    [InlineData(29, 365 * 29, false)]
    [InlineData(30, 91 * 30, false)]
    [InlineData(30, 92 * 30, true)]
    public void A_rate_is_told_of_enough_clients_seen_for_a_quarter_of_the_year(int clients, int days, bool told) =>
        Assert.Equal(told, GapFreeRateRule.IsMeaningful(clients, days));

    [Fact]
    public void A_year_is_twelve_months() => Assert.Equal(12 * 4, GapFreeRateRule.DaysToMonths(4 * 365 + 1), 1e-9);
}
