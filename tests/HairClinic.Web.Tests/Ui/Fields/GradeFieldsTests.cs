using Bunit;
using HairClinic.Domain.Visits;
using HairClinic.Web.Ui.Fields;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class GradeFieldsTests : UiTestContext
{
    private static readonly InspectionGrades Last = new(1, 0, 2, null, 0, 3);
    private InspectionGrades _value = InspectionGrades.NotLookedAt;
    private bool _copied;

    public GradeFieldsTests() => BeInteractive();

    [Fact]
    public void Nothing_is_filled_in_and_what_was_found_last_stands_beside_each()
    {
        var fields = Show(Last);

        Assert.Empty(fields.FindAll("input[checked]"));
        Assert.Equal(
            ["last: 1", "last: 0", "last: 2", "optional", "last: 0", "last: 3"],
            fields.FindAll("legend .small").Select(s => s.TextContent)
        );
        Assert.Contains("Last graded on", fields.Find(".hint").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Same_as_last_time_is_one_tap_is_a_copy_and_is_taken_back_by_the_same_tap()
    {
        var fields = Show(Last);

        fields.Find("button").Click();
        Assert.Equal((Last, true), (_value, _copied));
        fields = Show(Last);
        Assert.Equal("true", fields.Find("button").GetAttribute("aria-pressed"));
        fields.Find("button").Click();

        Assert.Equal((InspectionGrades.NotLookedAt, false), (_value, _copied));
    }

    [Fact]
    public void One_that_is_changed_after_the_copy_makes_it_a_look_of_its_own()
    {
        (_value, _copied) = (Last, true);

        Show(Last).Find("input[name=Knots][value='1']").Change(true);

        Assert.Equal((Last with { Knots = 1 }, false), (_value, _copied));
    }

    [Fact]
    public void At_the_first_take_down_there_is_nothing_to_copy()
    {
        var fields = Show(last: null);
        Assert.Equal("All as new", fields.Find("button").TextContent);

        fields.Find("button").Click();

        Assert.Equal((InspectionGrades.AsNew, false), (_value, _copied));
    }

    private IRenderedComponent<GradeFields> Show(InspectionGrades? last) =>
        Render<GradeFields>(p =>
            p.Add(f => f.Value, _value)
                .Add(f => f.Copied, _copied)
                .Add(f => f.Last, last)
                .Add(f => f.LastOn, last is null ? null : new LocalDate(2027, 1, 5))
                .Add(f => f.Today, new LocalDate(2027, 2, 3))
                .Add(f => f.Changed, told => (_value, _copied) = told)
        );
}
