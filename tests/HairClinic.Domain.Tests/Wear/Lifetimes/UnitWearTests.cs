using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
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

    // Of four items one was looked at: only what followed tells.
    [Fact]
    public void A_take_down_that_looked_at_part_of_it_counts_as_sound_if_it_was_bonded_again()
    {
        var part = Seen(30) with { Grades = new(1, null, null, null, 0, 0) };

        Assert.Equal(Spell.RightCensored(0), Of(UnitState.Resting, [(0, 30)], today: 90, seen: [part]).Life);
        Assert.Equal(Spell.RightCensored(30), Of(UnitState.Bonded, [(0, 30), (30, null)], today: 90, seen: [part]).Life);
    }

    [Fact]
    public void One_item_at_three_ends_it_whatever_else_was_looked_at()
    {
        var part = Seen(30) with { Grades = new(null, 3, null, null, null, null) };

        Assert.Equal(Spell.LeftCensored(30), Of(UnitState.Bonded, [(0, 30), (30, null)], today: 90, seen: [part]).Life);
    }

    [Fact]
    public void A_bonding_is_a_look_and_no_grade()
    {
        var wear = Of(UnitState.Bonded, [(0, 30), (30, 55), (55, null)], today: 60, seen: [Seen(30, 1), Seen(55)]);

        Assert.Equal(Spell.RightCensored(55), wear.Life);
        Assert.Equal([new GradedLook(30, All(1), null, null)], wear.Grades);
    }

    [Fact]
    public void Its_grades_are_told_in_worn_days_as_they_were_written_with_who_wrote_them()
    {
        var (first, second, stylist) = (new InspectionGrades(1, null, 0, 0, 2, null), All(1), Guid.CreateVersion7());

        var wear = Of(
            UnitState.Resting,
            [(0, 20), (40, 60)],
            today: 90,
            seen: [Seen(60) with { Grades = second, Copied = true }, Seen(20) with { Grades = first, Copied = false, Grader = stylist }]
        );

        Assert.Equal([new GradedLook(20, first, false, stylist), new GradedLook(40, second, true, null)], wear.Grades);
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
    public void Whoever_retired_it_has_said_whether_it_had_worn_out()
    {
        Assert.Equal(Spell.FromBounds(30, 55), AsRetired(Seen(60) with { SaidWornOut = true }).Life);
        Assert.Equal(Spell.FromBounds(30, 55), AsRetired(Seen(60, 3)).Life);
        Assert.Equal(Spell.RightCensored(55), AsRetired(Seen(60) with { SaidWornOut = false }).Life);
        Assert.Equal(Spell.RightCensored(55), AsRetired(Seen(60, 2)).Life);
    }

    // Not known to be worn out, and not known to be sound: the last look counts.
    [Fact]
    public void Asked_and_left_open_it_lasted_at_least_until_the_look_before()
    {
        Assert.Equal(Spell.RightCensored(30), AsRetired(Seen(60)).Life);
        Assert.Equal(Spell.RightCensored(30), AsRetired(Seen(60) with { Grades = new(2, 2, null, null, null, null) }).Life);
        Assert.False(AsRetired(Seen(60)).WornOut);
    }

    [Fact]
    public void Since_when_it_looked_worn_out_is_counted_in_worn_days()
    {
        var found = Seen(55, 3);

        Assert.Equal(Spell.FromBounds(46, 50), Of(UnitState.Resting, Twice, 90, seen: [About(SinceWhen.AboutAWeek)]).Life);
        Assert.Equal(Spell.FromBounds(52, 53), Of(UnitState.Resting, Twice, 90, seen: [About(SinceWhen.TwoOrThreeDays)]).Life);
        Assert.Equal(Spell.FromBounds(30, 55), Of(UnitState.Resting, Twice, 90, seen: [About(SinceWhen.NotKnown)]).Life);
        Assert.Equal(Spell.Exact(51), Of(UnitState.Resting, Twice, 90, seen: [found with { WornOutOn = Day(51) }]).Life);

        UnitInspection About(SinceWhen since) => found with { WornOutSince = since };
    }

    [Fact]
    public void Days_off_the_head_are_not_worn()
    {
        var wear = Of(UnitState.Bonded, [(0, 10), (50, null)], today: 70, graded: [(10, 1)]);

        Assert.Equal(30, wear.WornDays);
        Assert.Equal(Spell.RightCensored(10), wear.Life);
    }

    [Fact]
    public void A_repair_is_remembered_by_the_worn_day_it_was_made_on()
    {
        var wear = Of(UnitState.Bonded, [(0, 40), (60, 100), (100, null)], today: 110, repairs: [50]);

        Assert.Equal((Spell.RightCensored(80), 40.0), (wear.Life, wear.RepairedAt));
        Assert.Null(Of(UnitState.Bonded, [(0, null)], today: 10).RepairedAt);
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

    // Last seen sound as it was bonded again, after 30 worn days; off after 55.
    private static readonly (int From, int? To)[] Twice = [(0, 30), (30, 55)];

    private static UnitWear AsRetired(UnitInspection look) => Of(UnitState.Retired, Twice, today: 200, asRetired: look);

    private static UnitWear Of(
        UnitState state,
        (int From, int? To)[] worn,
        int today,
        (int Day, int? Grade)[]? graded = null,
        int[]? repairs = null,
        UnitInspection[]? seen = null,
        UnitInspection? asRetired = null
    ) =>
        UnitWear.FromRecords(
            state,
            [.. worn.Select(w => new WornPeriod(Guid.Empty, Day(w.From), w.To is { } to ? Day(to) : null))],
            seen ?? (graded ?? []).Select(g => Seen(g.Day, g.Grade)),
            (repairs ?? []).Select(Day),
            Day(today),
            asRetired: asRetired
        );

    // Every item graded alike; none where nobody looked.
    private static UnitInspection Seen(int day, int? grade = null) => new(Day(day), All(grade));

    private static InspectionGrades All(int? grade) => new(grade, grade, grade, grade, grade, grade);

    private static LocalDate Day(int number) => First.PlusDays(number);
}
