namespace HairClinic.Web.Data.Writes;

/// <summary>
/// Keeps a form's draft shortly after the last key or tap, so that typing costs one write, not one a letter. When the
/// page goes away, for whatever reason, what is still pending is kept at once.
/// </summary>
/// <param name="changed">Called when <see cref="Failed"/> has changed, so that the page says so.</param>
public sealed class DraftTimer(Func<Task> keep, Func<Task> changed) : IAsyncDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(400);

    /// <summary>How long it waits before it tries again by itself, while the book cannot be reached.</summary>
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(2);

    private CancellationTokenSource? _pending;
    private Task _work = Task.CompletedTask;

    /// <summary>The last attempt kept nothing. While the book cannot be reached it is tried again by itself, else with the next touch.</summary>
    public bool Failed { get; private set; }

    /// <summary>Something changed. Returns at once.</summary>
    public void Touch()
    {
        _pending?.Cancel();
        _pending?.Dispose();
        _pending = new CancellationTokenSource();
        _work = KeepLaterAsync(_work, _pending, _pending.Token);
    }

    /// <summary>Forgets what is pending and waits for what is under way: the form itself is about to be saved.</summary>
    public async Task CancelPendingAsync()
    {
        if (_pending is { } pending)
            await pending.CancelAsync();
        _pending?.Dispose();
        _pending = null;
        await _work;
    }

    public async ValueTask DisposeAsync()
    {
        var wasPending = _pending is not null;
        await CancelPendingAsync();
        if (wasPending)
            await TryAsync();
    }

    // It never throws: the next one waits for it.
    private async Task KeepLaterAsync(Task before, CancellationTokenSource mine, CancellationToken stop)
    {
        await before;
        var wait = Pause;
        Exception? fault;
        do
        {
            try
            {
                await Task.Delay(wait, stop);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            wait = Again;
            fault = await TryAsync();
            var changes = Failed == (fault is null);
            Failed = fault is not null;
            if (changes)
                await changed();
        } while (ConnectionLoss.Is(fault));
        if (_pending == mine)
            _pending = null;
    }

    private async Task<Exception?> TryAsync()
    {
        try
        {
            await keep();
            return null;
        }
        // Any error: a draft is only a help and must not break the form. An ended sign-in shows when the form is saved.
        catch (Exception e)
        {
            return e;
        }
    }
}
