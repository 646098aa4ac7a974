using System.Diagnostics;
using FluentValidation.Results;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Feedback;

namespace HairClinic.Web.Shell;

/// <summary>
/// One form's way to its slice: rules first, then the write under an id made when the form opened, so that a
/// double tap or a retry is harmless. Whatever goes wrong, what was typed stays. While the book cannot be reached it is
/// sent again by itself for a minute, and with the next tap, always under the same id.
/// </summary>
public sealed class Submission<TInput>(IValidator<TInput> rules) : IIdempotentForm
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    private Sending? _sending;

    /// <inheritdoc />
    public Guid Key { get; private set; } = Guid.CreateVersion7();

    /// <summary>What the rules said last, or the domain's no about one field: each stands at its field.</summary>
    public ValidationResult? Check { get; private set; }

    /// <summary>The domain's no about the whole, or that it is not saved yet, to be shown in words.</summary>
    public Refusal? Refused { get; private set; }

    /// <summary>Someone else saved first; the form shows what changed and keeps what was typed.</summary>
    public bool WasOvertaken { get; private set; }

    /// <summary>At this moment. Not while it waits for the book to come back: a tap then sends it at once.</summary>
    public bool Saving { get; private set; }

    /// <inheritdoc />
    public void AdoptKey(Guid key)
    {
        if (_sending is null)
            Key = key;
    }

    /// <returns>Whether it was carried out.</returns>
    public async Task<bool> SendAsync(TInput input, Func<Guid, Task> save)
    {
        if (Saving)
            return false;
        if (_sending is { } waiting)
        {
            waiting.Wake(over: !ReferenceEquals(waiting.Input, input));
            await waiting.Ended;
            if (ReferenceEquals(waiting.Input, input))
                return false;
        }
        var mine = _sending = new Sending(input!, Body(input));
        try
        {
            return await UntilSavedAsync(mine, input, save);
        }
        finally
        {
            _sending = null;
            mine.End();
        }
    }

    private async Task<bool> UntilSavedAsync(Sending mine, TInput input, Func<Guid, Task> save)
    {
        var live = LiveComponent.Handling;
        for (var since = Stopwatch.StartNew(); ; )
        {
            if (await TryAsync(input, save) is { } saved)
                return saved;
            if (since.Elapsed > Patience)
                break;
            Refused = new Refusal("Not saved yet: the book cannot be reached. It is tried again by itself.");
            live?.Redraw();
            var tapped = await mine.PauseAsync(Pause, live?.PageEnd ?? default);
            if (mine.Over || live?.PageEnd.IsCancellationRequested == true)
                return false;
            // Somebody types on: what they have not finished is theirs to send.
            if (!tapped && Body(input) != mine.Body)
                break;
        }
        Refused = new Refusal("Not saved yet: the book cannot be reached. What you typed is still here; tap once more to save it.");
        return false;
    }

    /// <returns>Null when the book could not be reached, so that nobody knows whether it was carried out.</returns>
    private async Task<bool?> TryAsync(TInput input, Func<Guid, Task> save)
    {
        (Refused, WasOvertaken) = (null, false);
        var unread = LiveComponent.Handling?.Unread?.FaultsOfForm(Check) ?? [];
        Check = new ValidationResult([.. unread, .. rules.Validate(input).Errors]);
        if (!Check.IsValid)
            return false;
        Saving = true;
        try
        {
            await save(Key);
            Key = Guid.CreateVersion7();
            return true;
        }
        catch (Refusal refusal) when (refusal.Field is { } field && typeof(TInput).GetProperty(field) is not null)
        {
            Check = new ValidationResult([FaultText.ToFieldFailure(field, refusal)]);
        }
        catch (Refusal refusal)
        {
            Refused = refusal;
        }
        catch (StaleActorException)
        {
            Refused = new Refusal(
                "Your sign-in has changed or ended since this page opened, so nothing was saved. Open the page again in another tab and sign in."
            );
        }
        catch (TooBusyException)
        {
            Refused = new Refusal(TooBusyException.Sentence);
        }
        catch (OvertakenException)
        {
            WasOvertaken = true;
        }
        catch (Exception e) when (ConnectionLoss.Is(e))
        {
            return null;
        }
        finally
        {
            Saving = false;
        }
        return false;
    }

    private static string Body(TInput input) => JsonSerializer.Serialize(input, JsonColumns.Options);

    /// <summary>One that may have to wait for the book. A tap on the same form wakes it; one that means something else takes its place.</summary>
    private sealed class Sending(object input, string body)
    {
        private readonly TaskCompletionSource _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private TaskCompletionSource _woken = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public object Input { get; } = input;

        public string Body { get; } = body;

        public bool Over { get; private set; }

        public Task Ended => _ended.Task;

        public void Wake(bool over)
        {
            Over |= over;
            _woken.TrySetResult();
        }

        public void End() => _ended.TrySetResult();

        /// <returns>Whether somebody tapped.</returns>
        public async Task<bool> PauseAsync(TimeSpan pause, CancellationToken stop)
        {
            await Task.WhenAny(_woken.Task, Task.Delay(pause, stop));
            var tapped = _woken.Task.IsCompleted;
            _woken = new(TaskCreationOptions.RunContinuationsAsynchronously);
            return tapped;
        }
    }
}
