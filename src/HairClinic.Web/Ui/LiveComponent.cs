using HairClinic.Web.Ui.Feedback;
using HairClinic.Web.Ui.Fields;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;

namespace HairClinic.Web.Ui;

/// <summary>
/// What every component of ours is. It is drawn once it has read what it shows, so that a live page takes the place of the drawn one
/// whole: nothing that was typed or tapped meets a page without its fields. On a live page, whose person may have lost their role, salon
/// or sign-in since it opened, or whose book cannot be reached, it says so in words, instead of breaking over the database's no.
/// </summary>
/// <remarks>A page that is only being drawn passes it on: the shell looks afresh who they are.</remarks>
public abstract class LiveComponent : ComponentBase, IHandleEvent
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);
    private static readonly AsyncLocal<LiveComponent?> Handler = new();

    private bool _read;
    private bool _reading;
    private bool _changedMeanwhile;
    private CancellationToken? _pageEnd;

    [Inject]
    private IJSRuntime Page { get; set; } = default!;

    [CascadingParameter]
    private LastTappedButton? Tapping { get; set; }

    [Inject]
    private IServiceProvider Circuit { get; set; } = default!;

    /// <summary>The component that a tap is being carried out for; null outside of one.</summary>
    internal static LiveComponent? Handling => Handler.Value;

    /// <summary>Ends with the page's circuit.</summary>
    internal CancellationToken PageEnd => _pageEnd ??= Circuit.GetService<CircuitCancellation>()?.Token ?? CancellationToken.None;

    /// <summary>What stands in the page's fields and could not be read.</summary>
    internal UnreadableFields? Unread => Circuit.GetService<UnreadableFields>();

    /// <summary>Draws it again in the middle of what it does.</summary>
    internal void Redraw() => _ = InvokeAsync(StateHasChanged);

    // As the framework's own, but that nothing is drawn before it was read.
    public override async Task SetParametersAsync(ParameterView parameters)
    {
        parameters.SetParameterProperties(this);
        if (_reading)
        {
            _changedMeanwhile = true;
            return;
        }
        if (_read)
        {
            var work = ReadAsync(SetAsync);
            StateHasChanged();
            if (work.IsCompletedSuccessfully)
                return;
            await work;
        }
        else
        {
            _reading = true;
            try
            {
                if (!await ReadAsync(OpenAsync))
                    return;
                _read = true;
            }
            finally
            {
                _reading = false;
            }
        }
        StateHasChanged();
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
        Handler.Value = this;
        // Another tap than the last: a button that takes answers says so itself.
        if (arg is MouseEventArgs)
            Tapping?.Clear();
        try
        {
            await item.InvokeAsync(arg);
        }
        catch (Exception e) when (FaultOf(e) is var fault and not PageFaultKind.None)
        {
            await TellAsync(fault);
        }
    }

    // A page that is only being drawn passes everything on.
    private PageFaultKind FaultOf(Exception e) =>
        RendererInfo.IsInteractive ? Circuit.GetService<PageFaultClassifier>()?.Of(e) ?? PageFaultKind.None : PageFaultKind.None;

    private Task TellAsync(PageFaultKind fault) =>
        fault is PageFaultKind.AccessEnded ? AccessEndedNotice.ShowAsync(Page) : DatabaseOutageNotice.ShowAsync(Page);

    private async Task OpenAsync()
    {
        OnInitialized();
        await OnInitializedAsync();
        do
        {
            _changedMeanwhile = false;
            await SetAsync();
        } while (_changedMeanwhile);
    }

    private Task SetAsync()
    {
        OnParametersSet();
        return OnParametersSetAsync();
    }

    /// <summary>Reads until the book can be reached, as long as the page is there.</summary>
    /// <returns>Whether it was read.</returns>
    private async Task<bool> ReadAsync(Func<Task> read)
    {
        while (true)
        {
            try
            {
                await read();
                return true;
            }
            catch (OperationCanceledException)
            {
                // Nobody waits for it any more.
                return false;
            }
            catch (Exception e) when (FaultOf(e) is var fault and not PageFaultKind.None)
            {
                await TellAsync(fault);
                if (fault is PageFaultKind.AccessEnded)
                    return false;
                await Task.Delay(Pause, PageEnd);
            }
        }
    }
}
