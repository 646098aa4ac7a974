using HairClinic.Domain.Bonding;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Tests.Wear.Curves;

/// <summary>What a bond's hold becomes for the curves and the model; how a bond becomes a hold is in HoldObservationTests.</summary>
public sealed class SpellTests
{
    [Fact]
    public void A_lift_on_a_known_day_is_an_end_then() => Assert.Equal(Spell.Exact(21), Spell.FromHold(new(HoldCensoring.Exact, 21, 21)));

    [Fact]
    public void A_lift_somewhere_since_the_last_sound_day_lies_between() =>
        Assert.Equal((SpellEnd.Between, 14, 23), Ends(Spell.FromHold(new(HoldCensoring.Between, 14, 23))));

    [Fact]
    public void A_lift_within_the_first_day_or_with_no_contact_before_it_has_no_lower_end()
    {
        Assert.Equal((SpellEnd.By, 0, 1), Ends(Spell.FromHold(new(HoldCensoring.Between, 0, 1))));
        Assert.Equal((SpellEnd.By, 0, 28), Ends(Spell.FromHold(new(HoldCensoring.Between, 0, 28))));
    }

    [Fact]
    public void A_sound_bond_went_on_at_least_so_long() =>
        Assert.Equal((SpellEnd.After, 28, double.PositiveInfinity), Ends(Spell.FromHold(new(HoldCensoring.AtLeast, 28, null))));

    [Fact]
    public void A_bond_made_today_is_kept_and_tells_nothing() =>
        Assert.Equal(Spell.RightCensored(0), Spell.FromHold(new(HoldCensoring.AtLeast, 0, null)));

    [Fact]
    public void Both_ends_on_one_day_are_that_day() => Assert.Equal(Spell.Exact(9), Spell.FromBounds(9, 9));

    [Theory]
    [InlineData(-1, 5)]
    [InlineData(6, 5)]
    [InlineData(0, 0)]
    [InlineData(double.NaN, 5)]
    [InlineData(3, double.NaN)]
    public void An_interval_without_sense_is_refused(double lower, double upper) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Spell.FromBounds(lower, upper));

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Nothing_ends_at_no_time(double time) => Assert.Throws<ArgumentOutOfRangeException>(() => Spell.Exact(time));

    private static (SpellEnd, double, double) Ends(Spell spell) => (spell.End, spell.Lower, spell.Upper);
}
