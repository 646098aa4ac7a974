using Bunit;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class TextFieldTests : UiTestContext
{
    private string? _value = "quiet room";

    [Fact]
    public void What_is_typed_reaches_the_page()
    {
        Show(1).Find("input").Change("alcove");
        Assert.Equal("alcove", _value);
    }

    [Fact]
    public void More_than_one_line_is_a_text_area() => Assert.Equal("quiet room", Show(4).Find("textarea").GetAttribute("value"));

    [Fact]
    public void A_field_that_may_stay_empty_says_so() =>
        Assert.Contains("optional", Show(1).Find("label").TextContent, StringComparison.Ordinal);

    private IRenderedComponent<TextField> Show(int lines) =>
        Render<TextField>(p =>
            p.Add(f => f.Label, "Note")
                .Add(f => f.Name, "Note")
                .Add(f => f.Lines, lines)
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
