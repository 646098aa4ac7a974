using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Tests.Visits;

/// <summary>What grades say of a unit's structure when some were left blank. Common practice, no source.</summary>
public sealed class InspectionGradesTests
{
    private static readonly InspectionGrades Sound = new(0, 1, 2, 1, null, null);

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(2, true)]
    [InlineData(3, false)]
    public void All_four_looked_at_it_is_at_its_worst_item_and_not_beyond(int grade, bool at) => Assert.Equal(at, Sound.IsAtLeast(grade));

    [Fact]
    public void One_item_is_enough_to_say_that_it_is_worn_and_never_enough_to_say_that_it_is_not()
    {
        Assert.True((InspectionGrades.NotLookedAt with { Base = 3 }).IsAtLeast(3));
        foreach (
            var part in new[]
            {
                Sound with
                {
                    Shedding = null,
                },
                Sound with
                {
                    Knots = null,
                },
                Sound with
                {
                    Base = null,
                },
                Sound with
                {
                    Fit = null,
                },
            }
        )
            Assert.Null(part.IsAtLeast(3));
        Assert.Null(InspectionGrades.NotLookedAt.IsAtLeast(1));
    }

    [Fact]
    public void Hair_and_colour_do_not_bear_on_its_structure() => Assert.False((Sound with { Hair = 4, Colour = 4 }).IsAtLeast(3));

    [Fact]
    public void The_worst_is_told_where_nothing_that_was_not_looked_at_can_change_it()
    {
        Assert.Equal(2, Sound.WorstStructural);
        Assert.Equal(3, (InspectionGrades.NotLookedAt with { Fit = 3 }).WorstStructural);
        Assert.Equal(4, (Sound with { Knots = 4, Base = null }).WorstStructural);
        Assert.Null((Sound with { Base = null }).WorstStructural);
        Assert.Null(InspectionGrades.NotLookedAt.WorstStructural);
    }

    [Fact]
    public void Where_nobody_looked_now_it_is_known_as_it_was_last_time()
    {
        Assert.Equal(new(3, 1, 2, 1, 4, null), new InspectionGrades(3, null, null, null, 4, null).OrAsBefore(Sound));
        Assert.Equal(Sound, Sound.OrAsBefore(null));
        Assert.Equal(Sound, InspectionGrades.NotLookedAt.OrAsBefore(Sound));
    }

    [Fact]
    public void Nothing_graded_is_nothing_said()
    {
        Assert.False(InspectionGrades.NotLookedAt.AnyGiven);
        Assert.True((InspectionGrades.NotLookedAt with { Colour = 0 }).AnyGiven);
    }
}
