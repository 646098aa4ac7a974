using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

public sealed class HoldSeasonTests
{
    [Fact]
    public void A_year_goes_round_once_and_summer_lies_opposite_to_winter()
    {
        var (winter, summer) = (HoldSeason.Of(new(2026, 1, 1)), HoldSeason.Of(new(2026, 7, 2)));

        Assert.Equal((1, 0), (winter.Cosine, winter.Sine));
        Assert.Equal(-1, summer.Cosine, 1e-3);
        Assert.Equal(HoldSeason.Of(new(2026, 12, 31)).Sine, -HoldSeason.Of(new(2026, 1, 2)).Sine, 1e-9);
        // A leap year has a day more to go round in.
        Assert.Equal(-2 * Math.PI / 366, HoldSeason.Of(new(2028, 12, 31)).Sine, 1e-4);
    }

    [Theory]
    [InlineData(364, false)]
    [InlineData(365, true)]
    public void A_season_is_told_from_a_year_of_bonds_on(int days, bool tells) =>
        Assert.Equal(tells, HoldSeason.CanTell(new(2026, 3, 1), new LocalDate(2026, 3, 1).PlusDays(days)));
}
