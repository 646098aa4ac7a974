using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>One test for each way a unit's life ends or does not; the ways a hold ends are in HoldObservationTests.</summary>
public sealed class UnitLifeBuilderTests
{
    [Fact]
    public void The_first_structural_grade_of_three_ends_it_between_the_inspections_that_bracket_it() =>
        Assert.Equal(Spell.FromBounds(120, 150), UnitLifeBuilder.FromInspections(Looks([(60, 0), (120, 2), (150, 3), (180, 4)]), 180));

    [Fact]
    public void Found_worn_out_at_the_first_look_it_lasted_at_most_so_long() =>
        Assert.Equal(Spell.LeftCensored(90), UnitLifeBuilder.FromInspections(Looks([(90, 4)]), 90));

    [Fact]
    public void An_inspection_at_which_nobody_looked_brackets_nothing() =>
        Assert.Equal(Spell.FromBounds(60, 150), UnitLifeBuilder.FromInspections(Looks([(60, 1), (120, null), (150, 3)]), 150));

    [Fact]
    public void Put_aside_still_wearable_lost_damaged_or_in_wear_today_it_lasted_at_least_so_long() =>
        Assert.Equal(Spell.RightCensored(170), UnitLifeBuilder.FromInspections(Looks([(60, 0), (150, 2)]), 170));

    [Fact]
    public void Worn_out_before_its_first_day_was_over_it_ended_within_that_day() =>
        Assert.Equal(Spell.LeftCensored(1), UnitLifeBuilder.FromInspections(Looks([(0, 3)]), 0));

    [Fact]
    public void A_repair_after_grade_three_does_not_begin_a_new_life() =>
        Assert.Equal(Spell.FromBounds(100, 130), UnitLifeBuilder.FromInspections(Looks([(100, 1), (130, 3), (160, 0)]), 200));

    [Fact]
    public void Not_worn_yet_tells_nothing() => Assert.Equal(Spell.RightCensored(0), UnitLifeBuilder.FromInspections(Looks([]), 0));

    [Fact]
    public void A_life_remembers_when_the_unit_was_first_repaired() =>
        Assert.Equal((Spell.FromBounds(120, 150), 90.0), Repaired([(60, 0), (120, 2), (150, 3)], 150, 110, 90));

    [Fact]
    public void Who_repairs_has_looked_at_it() =>
        Assert.Equal((Spell.FromBounds(140, 150), 130.0), Repaired([(120, 2), (150, 3)], 150, 130, 140));

    [Fact]
    public void Still_in_wear_after_a_repair_it_lasted_at_least_so_long() =>
        Assert.Equal((Spell.RightCensored(170), 90.0), Repaired([(60, 0), (150, 2)], 170, 90));

    [Fact]
    public void Never_repaired_repaired_before_its_first_day_or_after_its_end()
    {
        Assert.Equal((Spell.RightCensored(170), null), Repaired([(60, 0)], 170));
        Assert.Equal((Spell.RightCensored(170), 0.0), Repaired([(60, 0)], 170, 0));
        Assert.Equal((Spell.FromBounds(100, 130), null), Repaired([(100, 1), (130, 3)], 200, 130, 160));
    }

    [Fact]
    public void What_is_remembered_of_when_it_began_to_look_worn_out_narrows_its_end()
    {
        UnitLook found = new(150, true);

        Assert.Equal(Spell.FromBounds(141, 145), UnitLifeBuilder.FromInspections([new(120, false), found.Since(141, 145)], 150));
        Assert.Equal(Spell.Exact(143), UnitLifeBuilder.FromInspections([new(120, false), found.Since(143, 143)], 150));
        Assert.Equal(Spell.LeftCensored(1), UnitLifeBuilder.FromInspections([found.Since(0, 0)], 150));
    }

    [Fact]
    public void What_is_remembered_counts_as_far_as_nobody_saw_it_sound_since()
    {
        UnitLook found = new(150, true);

        Assert.Equal(Spell.FromBounds(143, 145), UnitLifeBuilder.FromInspections([new(143, false), found.Since(141, 145)], 150));
        Assert.Equal(Spell.FromBounds(147, 150), UnitLifeBuilder.FromInspections([new(147, false), found.Since(141, 145)], 150));
    }

    private static (Spell, double?) Repaired((double WornDays, int? Grade)[] seen, double wornDays, params double[] repairedAt) =>
        UnitLifeBuilder.FromInspectionsAndRepairs(Looks(seen), wornDays, repairedAt);

    // By the worst structural grade; null where nobody looked.
    private static UnitLook[] Looks((double WornDays, int? Grade)[] seen) =>
        [.. seen.Select(s => new UnitLook(s.WornDays, s.Grade is { } grade ? grade >= InspectionGrades.PlanReplacement : null))];
}
