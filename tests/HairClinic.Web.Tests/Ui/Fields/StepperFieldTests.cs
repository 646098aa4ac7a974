using Bunit;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class StepperFieldTests : UiTestContext
{
    private int? _value = 3;

    [Fact]
    public void Each_tap_is_one_step()
    {
        var field = Show();
        field.Find("button[aria-label='Coats: one more']").Click();
        Assert.Equal(4, _value);
        field.Find("button[aria-label='Coats: one less']").Click();
        Assert.Equal(3, _value);
    }

    [Fact]
    public void It_does_not_step_past_its_ends()
    {
        _value = 5;
        Assert.True(Show().Find("button[aria-label='Coats: one more']").HasAttribute("disabled"));
    }

    [Fact]
    public void The_first_tap_on_an_empty_number_gives_the_least()
    {
        _value = null;
        Show().Find("button[aria-label='Coats: one more']").Click();
        Assert.Equal(1, _value);
    }

    [Theory]
    [InlineData("9")]
    [InlineData("1.5")]
    public void A_number_out_of_range_is_refused_in_words(string typed)
    {
        var field = Show();
        field.Find("input").Change(typed);
        Assert.Equal(3, _value);
        Assert.Contains("from 1 to 5", field.Find(".errors").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<StepperField> Show() =>
        Render<StepperField>(p =>
            p.Add(f => f.Label, "Coats")
                .Add(f => f.Name, "Coats")
                .Add(f => f.Least, 1)
                .Add(f => f.Most, 5)
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
