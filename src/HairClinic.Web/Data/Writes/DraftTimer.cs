using System.Data.Common;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Data.Writes;

/// <summary>
/// Keeps a form's draft shortly after the last key or tap, so that typing costs one write, not one a letter. When the
/// page goes away, for whatever reason, what is still pending is kept at once.
/// </summary>
public sealed class DraftTimer(Func<Task> keep) : IAsyncDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(400);

    private CancellationTokenSource? _pending;
    private Task _work = Task.CompletedTask;

    /// <summary>The last attempt did not reach the book; the next touch tries again.</summary>
    public bool Failed { get; private set; }

    /// <summary>Something changed. Returns at once.</summary>
    public void Touch()
    {
        _pending?.Cancel();
        _pending?.Dispose();
        _pending = new CancellationTokenSource();
        _work = KeepLaterAsync(_work, _pending);
    }

    /// <summary>Forgets what is pending and waits for what is under way: the form itself is about to be saved.</summary>
    public async Task RestAsync()
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
        await RestAsync();
        if (wasPending)
            await KeepNowAsync();
    }

    private async Task KeepLaterAsync(Task before, CancellationTokenSource mine)
    {
        try
        {
            await Task.Delay(Pause, mine.Token);
        }
        catch (OperationCanceledException)
        {
            return;
        }
        finally
        {
            await before;
        }
        if (_pending == mine)
            _pending = null;
        await KeepNowAsync();
    }

    private async Task KeepNowAsync()
    {
        try
        {
            await keep();
            Failed = false;
        }
        catch (Exception e) when (e is DbException or DbUpdateException)
        {
            Failed = true;
        }
    }
}
