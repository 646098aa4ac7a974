using Bunit;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class GradePickerTests : UiTestContext
{
    private int? _value;

    [Fact]
    public void Five_grades_each_have_a_number_a_word_and_a_picture()
    {
        var picker = Show();
        Assert.Equal(
            ["0 as new", "1 slight", "2 fair", "3 worn", "4 unfit"],
            picker.FindAll("label span").Select(word => word.TextContent)
        );
        Assert.Equal(5, picker.FindAll("label svg").Count);
        Assert.Equal("Knots", picker.Find("legend").TextContent.Trim());
    }

    [Fact]
    public void The_picture_loses_hair_with_every_grade_and_only_the_unfit_is_struck_out()
    {
        var strands = Show().FindAll("label").Select(label => label.QuerySelectorAll(".strand").Length).ToList();
        Assert.Equal([9, 7, 5, 3, 1], strands);
        Assert.Single(Show().FindAll(".unfit"));
    }

    [Fact]
    public void One_tap_grades()
    {
        var picker = Show();
        picker.FindAll("input")[3].Change(true);
        Assert.Equal(3, _value);
        Assert.True(picker.FindAll("input")[3].HasAttribute("checked"));
    }

    [Fact]
    public void The_same_number_again_takes_it_back()
    {
        var picker = Show();
        picker.FindAll("input")[3].Click();
        Assert.Null(_value);
        picker.FindAll("input")[3].Change(true);

        picker.FindAll("input")[3].Click();

        Assert.Null(_value);
        Assert.Empty(picker.FindAll("input[checked]"));
    }

    [Theory]
    [InlineData("Delete", true)]
    [InlineData("Backspace", true)]
    [InlineData(" ", false)]
    public void By_the_keyboard_it_is_cleared_with_the_keys_that_clear(string key, bool clears)
    {
        var picker = Show();
        picker.FindAll("input")[2].Change(true);

        picker.FindAll("input")[2].KeyDown(key);

        Assert.Equal(clears ? null : 2, _value);
    }

    [Fact]
    public void What_was_found_last_time_stands_beside_the_label_and_chooses_nothing()
    {
        var picker = Show(last: 1);

        Assert.Equal("last: 1", picker.Find("legend .small").TextContent);
        Assert.Empty(picker.FindAll("input[checked]"));
    }

    private IRenderedComponent<GradePicker> Show(int? last = null) =>
        Render<GradePicker>(p =>
            p.Add(f => f.Label, "Knots")
                .Add(f => f.Name, "Knots")
                .Add(f => f.Required, true)
                .Add(f => f.Last, last)
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
