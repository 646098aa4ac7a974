using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>From bonds, take-downs and repairs to worn days: which looks count is common practice, no source.</summary>
public sealed class UnitWearTests
{
    private static readonly LocalDate First = new(2027, 1, 4);

    [Fact]
    public void Whoever_bonds_a_unit_has_seen_that_it_still_wears()
    {
        var wear = Of(UnitState.Bonded, [(0, 30), (30, 60), (60, null)], today: 75);

        Assert.Equal((75, false), (wear.WornDays, wear.WornOut));
        Assert.Equal(Spell.RightCensored(60), wear.Life);
    }

    [Fact]
    public void A_take_down_of_the_same_day_says_more_than_the_bond()
    {
        var wear = Of(UnitState.Bonded, [(0, 30), (30, null)], today: 40, graded: [(30, 3)]);

        Assert.True(wear.WornOut);
        Assert.Equal(Spell.FromBounds(0, 30), wear.Life);
    }

    [Fact]
    public void A_take_down_at_which_nobody_looked_says_nothing_of_how_long_it_lasts()
    {
        var wear = Of(UnitState.Resting, [(0, 30)], today: 90, graded: [(30, null)]);

        Assert.Equal((30, false), (wear.WornDays, wear.WornOut));
        Assert.Equal(Spell.RightCensored(0), wear.Life);
    }

    [Fact]
    public void What_was_retired_for_wear_had_worn_out_by_then() =>
        Assert.Equal(Spell.FromBounds(30, 55), Of(UnitState.Retired, [(0, 30), (30, 55)], today: 200).Life);

    [Fact]
    public void Days_off_the_head_are_not_worn()
    {
        var wear = Of(UnitState.Bonded, [(0, 10), (50, null)], today: 70, graded: [(10, 1)]);

        Assert.Equal(30, wear.WornDays);
        Assert.Equal(Spell.RightCensored(10), wear.Life);
    }

    [Fact]
    public void A_repair_parts_the_life_at_the_worn_day_it_was_made_on()
    {
        var wear = Of(UnitState.Bonded, [(0, 40), (60, 100), (100, null)], today: 110, repairs: [50]);

        Assert.Equal(
            [new UnitLifeSegment(Spell.RightCensored(40), 0, 0), new UnitLifeSegment(Spell.RightCensored(80), 40, 1)],
            wear.Stretches
        );
        Assert.Empty(Of(UnitState.Bonded, [(0, null)], today: 10).Stretches);
    }

    // A unit that wears still is destroyed too, where nobody needs it.
    [Fact]
    public void One_that_went_because_its_client_needs_none_lasted_at_least_until_the_last_look()
    {
        var worn = new WornPeriod[] { new(Guid.Empty, Day(0), Day(30)), new(Guid.Empty, Day(30), Day(50)) };

        var wear = UnitWear.FromRecords(UnitState.Retired, worn, [], [], Day(60), needEnded: true);

        Assert.Equal(UnitWear.FromRecords(UnitState.Resting, worn, [], [], Day(60)).Life, wear.Life);
        Assert.NotEqual(UnitWear.FromRecords(UnitState.Retired, worn, [], [], Day(60)).Life, wear.Life);
    }

    private static UnitWear Of(
        UnitState state,
        (int From, int? To)[] worn,
        int today,
        (int Day, int? Grade)[]? graded = null,
        int[]? repairs = null
    ) =>
        UnitWear.FromRecords(
            state,
            [.. worn.Select(w => new WornPeriod(Guid.Empty, Day(w.From), w.To is { } to ? Day(to) : null))],
            (graded ?? []).Select(g => (Day(g.Day), g.Grade)),
            (repairs ?? []).Select(Day),
            Day(today)
        );

    private static LocalDate Day(int number) => First.PlusDays(number);
}
