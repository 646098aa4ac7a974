using AngleSharp.Dom;
using Bunit;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditSalon;

namespace HairClinic.Web.Tests.Features.Settings.EditSalon;

public sealed class EditSalonFormTests : UiTestContext
{
    [Fact]
    public void Times_typed_reach_the_input_and_a_second_spell_is_offered()
    {
        BeInteractive();
        var input = new Slice.Input();
        var form = Render<EditSalonForm>(p => p.Add(f => f.Input, input));

        form.Find("[aria-label='Monday from']").Change("09:00");
        form.Find("[aria-label='Monday to']").Change("12:30");
        form.Find("[aria-label='Monday again from']").Change("14:00");

        Assert.Equal(
            (new LocalTime(9, 0), new LocalTime(12, 30), new LocalTime(14, 0)),
            (input.Hours[0].From, input.Hours[0].To, input.Hours[0].SecondFrom)
        );
    }

    [Fact]
    public void What_is_wrong_with_a_day_stands_at_that_day()
    {
        BeInteractive();
        var input = new Slice.Input
        {
            Name = "Elm Row",
            Zone = "Europe/London",
            Currency = "GBP",
        };
        (input.Hours[2].From, input.Hours[2].To) = (new LocalTime(18, 0), new LocalTime(9, 0));

        var form = Render<EditSalonForm>(p => p.Add(f => f.Input, input).Add(f => f.Check, new EditSalonRules().Validate(input)));

        var day = form.FindAll("li").Single(li => li.TextContent.Contains("Wednesday", StringComparison.Ordinal));
        Assert.Contains("A stretch must end after it starts.", day.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_closure_can_be_added_and_taken_out()
    {
        BeInteractive();
        var input = new Slice.Input();
        var form = Render<EditSalonForm>(p => p.Add(f => f.Input, input));

        Button(form, "Add a closure").Click();
        Assert.Single(input.Closures);
        Button(form, "Take out").Click();

        Assert.Empty(input.Closures);
    }

    private static IElement Button(IRenderedComponent<EditSalonForm> form, string words) =>
        form.FindAll("button").Single(b => b.TextContent.Trim() == words);
}
