using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Books;
using NodaTime;

namespace HairClinic.Web.Tests.Data.Books;

public sealed class LastGradesTests
{
    private static readonly Instant First = Instant.FromUtc(2027, 1, 5, 10, 0);

    [Fact]
    public void Each_item_is_as_it_was_graded_last_and_the_day_is_the_last_on_which_anything_was()
    {
        var last = LastGrades.From(
            [Written(30, null, null), Written(60, null, null), Written(0, 2, 1), Written(45, 3, null)],
            DateTimeZone.Utc
        );

        Assert.Equal((InspectionGrades.NotLookedAt with { Shedding = 3, Knots = 1 }, new LocalDate(2027, 2, 19)), (last!.Grades, last.On));
    }

    [Fact]
    public void Where_nothing_was_graded_there_is_nothing_to_copy() =>
        Assert.Null(LastGrades.From([Written(0, null, null)], DateTimeZone.Utc));

    private static WrittenGrades Written(int day, int? shedding, int? knots) =>
        new(shedding, knots, null, null, null, null, First + Duration.FromDays(day));
}
