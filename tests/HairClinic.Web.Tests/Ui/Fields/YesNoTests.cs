using Bunit;
using FluentValidation.Results;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class YesNoTests : UiTestContext
{
    private bool? _value;

    [Fact]
    public void Nothing_is_chosen_until_someone_chooses() => Assert.Empty(Show().FindAll("input[checked]"));

    [Fact]
    public void A_tap_answers()
    {
        var field = Show();
        field.FindAll("input")[1].Change(true);
        Assert.False(_value);
    }

    [Fact]
    public void The_group_is_named_by_its_legend_and_described_by_its_messages()
    {
        var field = Show(new ValidationResult { Errors = { new("Waits", "Say whether the waits were kept.") } });
        Assert.Equal("f-Waits-errors", field.Find("fieldset").GetAttribute("aria-describedby"));
        Assert.Equal("Say whether the waits were kept.", field.Find("#f-Waits-errors").TextContent.Trim());
    }

    private IRenderedComponent<YesNo> Show(ValidationResult? result = null) =>
        Render<YesNo>(p =>
            p.Add(f => f.Label, "Waits")
                .Add(f => f.Name, "Waits")
                .Add(f => f.Result, result)
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
