using Bunit;
using FluentValidation.Results;
using HairClinic.Web.Ui.Feedback;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Ui.Feedback;

public sealed class FeedbackTests : UiTestContext
{
    private static readonly ValidationResult TwoWrong = new()
    {
        Errors = { new("On", "Not in the future."), new("", "The chair is closed.") },
    };

    [Fact]
    public void No_message_leaves_no_list() =>
        Assert.Empty(Render<RuleMessages>(p => p.Add(m => m.Name, "Other").Add(m => m.Result, TwoWrong)).Markup.Trim());

    [Fact]
    public void Messages_are_those_of_their_own_property() =>
        Render<RuleMessages>(p => p.Add(m => m.Name, "On").Add(m => m.Id, "x").Add(m => m.Result, TwoWrong))
            .MarkupMatches("""<ul class="errors" id="x"><li>Not in the future.</li></ul>""");

    [Fact]
    public void The_summary_leads_to_each_field_on_this_very_page()
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo("/visits/7/log-rebond?from=due");
        var summary = Render<ErrorSummary>(p => p.Add(s => s.Result, TwoWrong));
        Assert.Equal("/visits/7/log-rebond?from=due#f-On", summary.Find("a").GetAttribute("href"));
        Assert.Equal(2, summary.FindAll("li").Count);
        Assert.Equal("alert", summary.Find("div").GetAttribute("role"));
    }

    [Fact]
    public void When_nothing_is_wrong_there_is_no_summary() =>
        Assert.Empty(Render<ErrorSummary>(p => p.Add(s => s.Result, new ValidationResult())).Markup.Trim());

    [Fact]
    public void A_state_is_a_shape_and_a_word()
    {
        var chip = Render<Chip>(p => p.Add(c => c.Mark, StateMark.Full).Add(c => c.Wants, true).AddChildContent("overdue"));
        Assert.Equal("overdue", chip.Find(".chip.wants").TextContent.Trim());
        Assert.Single(chip.FindAll("svg[aria-hidden=true]"));
    }

    [Fact]
    public void No_two_states_have_the_same_shape()
    {
        var shapes = Enum.GetValues<StateMark>()
            .Where(mark => mark != StateMark.None)
            .Select(mark => Render<Chip>(p => p.Add(c => c.Mark, mark)).Find("svg").InnerHtml.Trim());
        Assert.Distinct(shapes);
    }

    [Fact]
    public void A_date_opens_to_its_reasons()
    {
        var why = Render<ReasonDetails>(p =>
            p.Add(w => w.Reasons, ["Four to eight weeks.", "Moved off a Sunday."]).AddChildContent("Wed 3 Dec")
        );
        Assert.StartsWith("Wed 3 Dec", why.Find("details > summary").TextContent, StringComparison.Ordinal);
        Assert.Equal(["Four to eight weeks.", "Moved off a Sunday."], why.FindAll("li").Select(reason => reason.TextContent));
    }

    [Fact]
    public void A_toast_is_spoken_and_can_be_closed()
    {
        var closed = false;
        var toast = Render<Toast>(p => p.Add(t => t.Text, "Logged.").Add(t => t.OnDismiss, () => closed = true));
        Assert.Equal("status", toast.Find(".toast").GetAttribute("role"));
        toast.Find("button").Click();
        Assert.True(closed);
    }

    [Fact]
    public void An_empty_state_says_what_to_do_first()
    {
        var empty = Render<EmptyState>(p =>
            p.Add(e => e.Title, "No chairs yet").AddChildContent("<p>Add the first.</p>").Add(e => e.Action, "<button>Add a chair</button>")
        );
        Assert.Equal("No chairs yet", empty.Find("h2").TextContent);
        Assert.Equal("Add a chair", empty.Find("button").TextContent);
    }
}
