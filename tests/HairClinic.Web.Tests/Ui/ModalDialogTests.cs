using Bunit;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Tests.Ui;

public sealed class ModalDialogTests : UiTestContext
{
    private readonly BunitJSModuleInterop _module;
    private bool _open;

    public ModalDialogTests()
    {
        _module = JSInterop.SetupModule("./js/dialog.js");
        _module.SetupVoid("show", _ => true).SetVoidResult();
        _module.SetupVoid("close", _ => true).SetVoidResult();
    }

    [Fact]
    public void It_is_named_by_its_title()
    {
        var dialog = Show();
        Assert.Equal("Book a visit", dialog.Find("#" + dialog.Find("dialog").GetAttribute("aria-labelledby")).TextContent);
    }

    [Fact]
    public void A_closed_dialog_asks_nothing_of_the_browser()
    {
        Show();
        Assert.Empty(_module.Invocations);
    }

    [Fact]
    public void Opening_shows_it_once_and_closing_closes_it()
    {
        _open = true;
        var dialog = Show();
        dialog.Render();
        Assert.Single(_module.Invocations["show"]);
        dialog.Render(p => p.Add(d => d.Open, false));
        Assert.Single(_module.Invocations["close"]);
    }

    [Fact]
    public void When_the_browser_closes_it_the_page_is_told()
    {
        _open = true;
        Show().Find("dialog").TriggerEvent("onclose", EventArgs.Empty);
        Assert.False(_open);
    }

    private IRenderedComponent<ModalDialog> Show() =>
        Render<ModalDialog>(p =>
            p.Add(d => d.Id, "book")
                .Add(d => d.Title, "Book a visit")
                .Bind(d => d.Open, _open, open => _open = open)
                .AddChildContent("<p>When?</p>")
        );
}
