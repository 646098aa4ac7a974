using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>What a take-down's grades say, and which of them are evidence; from the model's definition.</summary>
public sealed class GradeLookTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);

    [Theory]
    [InlineData(0, 0, 0, 0, false, false, false)]
    [InlineData(0, 1, 0, 0, true, false, false)]
    [InlineData(0, 0, 2, 1, true, true, false)]
    [InlineData(0, 0, 0, 3, true, true, true)]
    [InlineData(0, null, 0, 0, null, null, false)]
    [InlineData(1, null, 0, 0, true, null, false)]
    [InlineData(null, 2, null, null, true, true, false)]
    [InlineData(null, null, null, 4, true, true, true)]
    [InlineData(null, null, null, null, null, null, false)]
    public void One_item_says_that_it_has_worn_so_far_and_only_all_four_that_it_has_not(
        int? shedding,
        int? knots,
        int? lace,
        int? fit,
        bool? slight,
        bool? fair,
        bool wornOut
    )
    {
        var look = GradeLook.FromGrades(60, new InspectionGrades(shedding, knots, lace, fit, 4, null));

        Assert.Equal(new GradeLook(60, slight, fair, wornOut), look);
    }

    [Fact]
    public void Looks_are_taken_in_order_of_worn_days()
    {
        var sorted = UnitGrades.FromLooks([new(30, false, false), new(60, true, false), new(90, true, true)]);
        var mixed = UnitGrades.FromLooks([new(90, true, true), new(30, false, false), new(60, true, false)]);

        Assert.Equal(3, mixed.Looks);
        Same(sorted, mixed);
    }

    [Fact]
    public void A_look_at_which_nothing_was_seen_says_nothing()
    {
        var seen = UnitGrades.FromLooks([new(30, false, false), new(90, true, null)]);

        Assert.Equal(2, seen.Looks);
        Same(seen, UnitGrades.FromLooks([new(30, false, false), new(60, null, null), new(90, true, null)]));
    }

    [Fact]
    public void As_last_time_says_nothing_new_however_often()
    {
        var seen = UnitGrades.FromLooks([new(30, false, false), new(120, true, false)]);

        Same(
            seen,
            UnitGrades.FromLooks([
                new(30, false, false),
                new(60, false, false, IsCopy: true),
                new(90, false, false, IsCopy: true),
                new(120, true, false),
            ])
        );
    }

    [Fact]
    public void What_a_repair_mended_was_not_worn_but_the_look_that_led_to_it_counts()
    {
        var before = UnitGrades.FromLooks([new(60, false, false), new(100, true, true)]);

        Same(before, UnitGrades.FromLooks([new(60, false, false), new(100, true, true), new(130, false, false)], repairedAt: 100));
        Assert.Same(UnitGrades.None, UnitGrades.FromLooks([new(60, true, true)], repairedAt: 0));
    }

    [Fact]
    public void The_look_that_found_the_end_is_in_the_life_already()
    {
        var before = UnitGrades.FromLooks([new(60, false, false), new(100, true, false)]);

        Same(
            before,
            UnitGrades.FromLooks([new(60, false, false), new(100, true, false), new(130, true, true, WornOut: true), new(150, true, true)])
        );
    }

    [Fact]
    public void Before_the_first_day_nothing_has_worn()
    {
        Assert.Same(UnitGrades.None, UnitGrades.FromLooks([new(0, false, false)]));
    }

    [Fact]
    public void After_so_many_looks_only_those_are_known()
    {
        var all = UnitGrades.FromLooks([new(30, false, null), new(60, null, true), new(90, true, true)]);

        Same(UnitGrades.FromLooks([new(30, false, null), new(60, null, true)]), all.Until(2));
        Same(UnitGrades.FromLooks([new(30, false, null)]), all.Until(1));
        Assert.Same(UnitGrades.None, all.Until(0));
        Assert.Same(all, all.Until(3));
    }

    [Theory]
    [InlineData(-0.2, -0.3, 0.1)]
    [InlineData(-0.2, -0.2, 0.1)]
    [InlineData(-0.2, 0, 0.1)]
    [InlineData(-0.4, -0.2, -0.1)]
    [InlineData(double.NaN, -0.2, 0.1)]
    public void Grade_1_comes_before_grade_2_and_both_before_the_end(double slight, double fair, double unevenness)
    {
        var link = GradeLink.Usual with { SlightShift = slight, FairShift = fair, Unevenness = unevenness };

        Assert.False(link.IsValid);
        Assert.Throws<ArgumentException>(() => new GradeCurveBuilder(link, Window));
    }

    private static void Same(UnitGrades expected, UnitGrades found)
    {
        var builder = new GradeCurveBuilder(GradeLink.Usual, Window);
        var (one, other) = (builder.Build(expected), builder.Build(found));
        Assert.Equal(expected.Looks, found.Looks);
        for (var x = 3.6; x < 7; x += 0.1)
            Assert.Equal(one.At(x), other.At(x));
    }
}
