using Bunit;
using FluentValidation.Results;
using HairClinic.Web.Ui.Fields;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class DateFieldTests : UiTestContext
{
    private static readonly LocalDate Today = new(2031, 11, 25);
    private LocalDate? _value = new LocalDate(2031, 11, 3);

    public DateFieldTests() => BeInteractive();

    [Fact]
    public void The_date_stands_in_the_browsers_own_field_under_its_label()
    {
        var field = Show();
        var input = field.Find("input[type=date]");
        Assert.Equal("2031-11-03", input.GetAttribute("value"));
        Assert.Equal(input.Id, field.Find("label").GetAttribute("for"));
    }

    [Fact]
    public void A_picked_date_is_told_to_the_page()
    {
        Show().Find("input").Change("2031-12-24");
        Assert.Equal(new LocalDate(2031, 12, 24), _value);
    }

    [Fact]
    public void A_cleared_date_is_no_date()
    {
        Show().Find("input").Change("");
        Assert.Null(_value);
    }

    [Fact]
    public void One_tap_takes_the_salons_today()
    {
        Show().Find("button").Click();
        Assert.Equal(Today, _value);
    }

    [Fact]
    public void Before_the_page_is_interactive_there_is_no_button_that_does_nothing()
    {
        BeInteractive(false);
        Assert.Empty(Show().FindAll("button"));
    }

    [Fact]
    public void What_is_no_date_is_refused_in_words_and_changes_nothing()
    {
        var field = Show();
        field.Find("input").Change("soon");
        Assert.Equal(new LocalDate(2031, 11, 3), _value);
        Assert.Contains("not a date", field.Find(".errors").TextContent, StringComparison.Ordinal);
        Assert.Equal("true", field.Find("input").GetAttribute("aria-invalid"));
    }

    [Fact]
    public void A_rules_message_is_tied_to_the_field()
    {
        var field = Show(new ValidationResult { Errors = { new("On", "Not in the future."), new("Other", "Elsewhere.") } });
        var described = field.Find("input").GetAttribute("aria-describedby")!.Split(' ');
        Assert.Equal(["f-On-hint", "f-On-errors"], described);
        Assert.Equal("Not in the future.", field.Find("#f-On-errors").TextContent.Trim());
    }

    private IRenderedComponent<DateField> Show(ValidationResult? result = null) =>
        Render<DateField>(p =>
            p.Add(f => f.Label, "Bonded on")
                .Add(f => f.Name, "On")
                .Add(f => f.Hint, "The salon's day.")
                .Add(f => f.Today, Today)
                .Add(f => f.Result, result)
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
