using Bunit;
using FluentValidation.Results;
using HairClinic.Domain.Practices;
using HairClinic.Web.Shell;
using HairClinic.Web.Tests.Layout;
using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Feedback;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Ui.Feedback;

public sealed class TapMessageBaseTests : UiTestContext
{
    private readonly Refusal _no = new("This visit is logged already.");

    public TapMessageBaseTests()
    {
        Services.AddCascadingValue(_ => new LastTappedButton());
        BeInteractive();
    }

    [Fact]
    public void A_refusal_stands_by_the_button_that_was_tapped_and_the_page_goes_there()
    {
        var page = Show();

        page.Press("Far down");
        page.Page.Render(p => p.Add(x => x.Refused, _no));

        var said = page.Page.Find("[role=alert]");
        Assert.Equal(_no.Sentence, said.TextContent);
        Assert.Equal("Far down", said.NextElementSibling!.TextContent.Trim());
        Assert.Single(page.Page.FindAll("[role=alert]"));
        JSInterop.VerifyFocusAsyncInvoke();

        page.Page.Render(p => p.Add(x => x.Refused, null));
        Assert.Empty(page.Page.FindAll("[role=alert]"));
    }

    [Fact]
    public void Where_something_else_was_tapped_it_stands_in_its_own_place_and_the_page_goes_there()
    {
        var page = Show();
        page.Press("Far down");

        page.Press("A slot");
        page.Page.Render(p => p.Add(x => x.Refused, _no));

        Assert.Equal("h1", page.Page.Find("[role=alert]").PreviousElementSibling!.LocalName);
        JSInterop.VerifyFocusAsyncInvoke();
    }

    [Fact]
    public void It_does_not_go_away_with_its_button()
    {
        var page = Show();
        page.Press("Far down");
        page.Page.Render(p => p.Add(x => x.Refused, _no));

        page.Page.Render(p => p.Add(x => x.Short, true));

        Assert.Equal(_no.Sentence, page.Page.Find("[role=alert]").TextContent);
    }

    [Fact]
    public void Faults_are_counted_at_the_button_and_each_time_anew()
    {
        var page = Show();
        page.Press("Far down");

        page.Page.Render(p => p.Add(x => x.Check, Faults()));
        Assert.Equal("Not saved yet: 2 things are missing or wrong.", page.Page.Find(".at-finger").TextContent);
        var first = page.Page.Find("[data-faults]").GetAttribute("data-faults");

        page.Page.Render(p => p.Add(x => x.Check, Faults()));
        Assert.NotEqual(first, page.Page.Find("[data-faults]").GetAttribute("data-faults"));
    }

    // Whoever taps at the end of a form is led to the first fault by the summary: no form with rules is without one.
    [Fact]
    public void Every_form_with_rules_has_a_summary()
    {
        var without =
            from file in SourceTree.Files(SourceTree.Features, ".razor")
            let text = File.ReadAllText(file)
            where text.Contains("<form method=\"dialog\"", StringComparison.Ordinal)
            where text.Contains("Result=\"", StringComparison.Ordinal) && !text.Contains("<ErrorSummary", StringComparison.Ordinal)
            select SourceTree.Named(file);

        Assert.Empty(without);
    }

    private static ValidationResult Faults() =>
        new([new ValidationFailure("Name", "Type a name."), new ValidationFailure("Code", "Type a code.")]);

    private (IRenderedComponent<Sample> Page, Action<string> Press) Show()
    {
        var page = Render<Sample>();
        return (page, words => page.FindAll("button").Single(b => b.TextContent.Trim() == words).Click());
    }

    /// <summary>A page whose notice is at the top and whose buttons are far down.</summary>
    private sealed class Sample : LiveComponent
    {
        [Parameter]
        public Refusal? Refused { get; set; }

        [Parameter]
        public ValidationResult? Check { get; set; }

        /// <summary>The button is not drawn any more.</summary>
        [Parameter]
        public bool Short { get; set; }

        protected override void BuildRenderTree(Microsoft.AspNetCore.Components.Rendering.RenderTreeBuilder builder)
        {
            builder.AddMarkupContent(0, "<h1>Page</h1>");
            builder.OpenComponent<RefusalNotice>(1);
            builder.AddComponentParameter(2, nameof(RefusalNotice.Refusal), Refused);
            builder.CloseComponent();
            builder.OpenComponent<ErrorSummary>(3);
            builder.AddComponentParameter(4, nameof(ErrorSummary.Result), Check);
            builder.CloseComponent();
            if (!Short)
            {
                builder.OpenComponent<BusyButton>(5);
                builder.AddComponentParameter(6, nameof(BusyButton.ChildContent), (RenderFragment)(b => b.AddContent(0, "Far down")));
                builder.CloseComponent();
            }
            builder.OpenElement(7, "button");
            builder.AddAttribute(
                8,
                "onclick",
                EventCallback.Factory.Create<Microsoft.AspNetCore.Components.Web.MouseEventArgs>(this, () => { })
            );
            builder.AddContent(9, "A slot");
            builder.CloseElement();
        }
    }
}
