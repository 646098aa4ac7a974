using HairClinic.Web.Practices;
using HairClinic.Web.Ui.Feedback;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;

namespace HairClinic.Web.Shell;

/// <summary>
/// What every component of ours is. On a live page, whose person may have lost their role, salon or sign-in since it opened, the page
/// then says so in words, instead of breaking over the database's no.
/// </summary>
/// <remarks>A page that is only being drawn passes it on: <see cref="ActorChangedMiddleware"/> looks afresh who they are.</remarks>
public abstract class LiveComponent : ComponentBase, IHandleEvent
{
    [Inject]
    private IJSRuntime Page { get; set; } = default!;

    [CascadingParameter]
    private Finger? Tapping { get; set; }

    public override async Task SetParametersAsync(ParameterView parameters)
    {
        try
        {
            await base.SetParametersAsync(parameters);
        }
        catch (ActorChangedException) when (RendererInfo.IsInteractive)
        {
            await AccessEnded.TellAsync(Page);
        }
    }

    // As the framework's own: drawn when the handler pauses, and again when it is done.
    async Task IHandleEvent.HandleEventAsync(EventCallbackWorkItem item, object? arg)
    {
        var work = RunAsync(item, arg);
        StateHasChanged();
        if (work.IsCompletedSuccessfully || work.IsCanceled)
            return;
        try
        {
            await work;
        }
        catch (OperationCanceledException) when (work.IsCanceled)
        {
            return;
        }
        StateHasChanged();
    }

    private async Task RunAsync(EventCallbackWorkItem item, object? arg)
    {
        // Another tap than the last: a button that takes answers says so itself.
        if (arg is MouseEventArgs)
            Tapping?.Lift();
        try
        {
            await item.InvokeAsync(arg);
        }
        catch (ActorChangedException) when (RendererInfo.IsInteractive)
        {
            await AccessEnded.TellAsync(Page);
        }
    }
}
