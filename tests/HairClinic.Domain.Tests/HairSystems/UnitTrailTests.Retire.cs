using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.HairSystems;

// Whoever retires a unit is asked how it looks.
public sealed partial class UnitTrailTests
{
    private static readonly UnitEndLook LeftOpen = new(UnitCondition.NotSaid, Writer);

    [Fact]
    public void What_was_said_of_a_retired_unit_is_one_more_inspection_and_goes_with_the_step()
    {
        var unit = InHouse();
        var grades = InspectionGrades.AsNew with { Base = 3 };

        var step = Retire(unit, LeftOpen with { Grades = grades, GradesCopied = false, WornOutSince = SinceWhen.AboutAWeek });

        var seen = unit.InspectionAsRetired()!;
        Assert.Equal((Today, grades, false, Writer), (seen.Day, seen.Grades, seen.Copied, seen.Grader));
        Assert.Equal((true, SinceWhen.AboutAWeek), (seen.WornOut, seen.WornOutSince));
        TakeBack(unit, step);
        Assert.Null(unit.EndLook);
        Assert.Null(unit.InspectionAsRetired());
    }

    // 40 worn days, bonded at 0 and never seen since.
    [Theory]
    [InlineData(UnitCondition.WornOut, null, true)]
    [InlineData(UnitCondition.NotSaid, 3, true)]
    [InlineData(UnitCondition.WornOut, 3, true)]
    [InlineData(UnitCondition.StillWearable, null, false)]
    [InlineData(UnitCondition.NotSaid, 2, false)]
    [InlineData(UnitCondition.StillWearable, 2, false)]
    public void It_says_whether_the_unit_had_worn_out(UnitCondition condition, int? grade, bool wornOut)
    {
        var unit = InHouse();
        Retire(unit, LeftOpen with { Condition = condition, Grades = Alike(grade) });

        Assert.Equal(wornOut ? Spell.LeftCensored(40) : Spell.RightCensored(40), LifeOf(unit));
    }

    [Fact]
    public void Left_open_it_is_not_known_to_have_worn_out_and_where_nobody_was_asked_it_is_taken_to_have()
    {
        var (asked, old) = (InHouse(), InHouse());
        Retire(asked, LeftOpen);
        old.LeaveService(UnitState.Retired, Today, "shed");

        Assert.Equal(Spell.RightCensored(0), LifeOf(asked));
        Assert.Equal(Spell.LeftCensored(40), LifeOf(old));
    }

    [Fact]
    public void Condition_and_grades_that_contradict_each_other_are_refused_and_it_stays()
    {
        var unit = InHouse();

        Refused.Saying(
            "Worn out means 3 or 4 for shedding, knots, base or fit. Change a grade, or say that it still wears.",
            () => Retire(unit, LeftOpen with { Condition = UnitCondition.WornOut, Grades = Alike(2) })
        );
        Refused.Saying(
            "With 3 or 4 for shedding, knots, base or fit it is worn out. Change the grade, or say that it is worn out.",
            () => Retire(unit, LeftOpen with { Condition = UnitCondition.StillWearable, Grades = LeftOpen.Grades with { Knots = 3 } })
        );
        Refused.Saying("Grades run from 0, as new, to 4, unfit.", () => Retire(unit, LeftOpen with { Grades = Alike(5) }));
        Refused.Saying(
            "{0} is in the future: choose today or earlier.",
            () => Retire(unit, LeftOpen with { Condition = UnitCondition.WornOut, WornOutOn = Today.PlusDays(1) })
        );
        Assert.Equal((UnitState.Accepted, null), (unit.State, unit.EndLook));
    }

    [Fact]
    public void Its_day_is_corrected_with_the_step()
    {
        var unit = InHouse();
        var step = Retire(unit, LeftOpen);

        CorrectDay(unit, step, Today.PlusDays(-1));

        Assert.Equal(Today.PlusDays(-1), unit.InspectionAsRetired()!.Day);
    }

    private UnitStep Retire(HairSystem unit, UnitEndLook look) => unit.LeaveService(UnitState.Retired, Today, "shed", Entry(), look);

    private static InspectionGrades Alike(int? grade) => new(grade, grade, grade, grade, null, null);

    private static Spell LifeOf(HairSystem unit) =>
        UnitWear
            .FromRecords(
                unit.State,
                [new WornPeriod(unit.Id, Today.PlusDays(-50), Today.PlusDays(-10))],
                [],
                [],
                Today,
                asRetired: unit.InspectionAsRetired()
            )
            .Life;
}
