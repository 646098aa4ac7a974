using Bunit;
using HairClinic.Web.Fence;
using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Fields;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace HairClinic.Web.Tests.Ui;

/// <summary>On a live page the database's "you are no longer who you were" is told in words and breaks nothing.</summary>
public sealed class LiveComponentTests : UiTestContext
{
    private readonly BunitJSModuleInterop _script;

    public LiveComponentTests()
    {
        _script = JSInterop.SetupModule("./js/access-ended.js");
        _script.SetupVoid("tell").SetVoidResult();
    }

    [Fact]
    public void A_search_after_the_sign_in_ended_tells_it_and_does_not_stay_at_looking()
    {
        BeInteractive();
        var combo = Render<Combo>(p =>
            p.Add(f => f.Label, "Client")
                .Add(f => f.Name, "Client")
                .Add(f => f.Pause, TimeSpan.Zero)
                .Add(f => f.Search, (_, _) => throw new StaleActorException(new InvalidOperationException()))
        );

        combo.Find("input").Input("ada");

        combo.WaitForAssertion(() => _script.VerifyInvoke("tell"));
        combo.WaitForAssertion(() => Assert.Equal("", combo.Find("[role=status]").TextContent));
        Assert.False(Renderer.UnhandledException.IsCompleted);
    }

    [Fact]
    public void A_page_that_opens_after_it_tells_it_too()
    {
        BeInteractive();

        Render<Opening>(p => p.Add(o => o.Fault, new StaleActorException(new InvalidOperationException())));

        _script.VerifyInvoke("tell");
    }

    [Fact]
    public void A_page_that_is_only_drawn_passes_it_on_to_be_looked_up_afresh()
    {
        BeInteractive(false);

        Assert.Throws<StaleActorException>(() =>
            Render<Opening>(p => p.Add(o => o.Fault, new StaleActorException(new InvalidOperationException())))
        );
        _script.VerifyNotInvoke("tell");
    }

    [Fact]
    public void Any_other_fault_stays_one()
    {
        BeInteractive();

        Assert.Throws<TimeoutException>(() => Render<Opening>(p => p.Add(o => o.Fault, new TimeoutException())));
        _script.VerifyNotInvoke("tell");
    }

    private sealed class Opening : LiveComponent
    {
        [Parameter]
        public Exception Fault { get; set; } = default!;

        protected override void OnInitialized() => throw Fault;

        protected override void BuildRenderTree(RenderTreeBuilder builder) => builder.AddContent(0, "open");
    }
}
