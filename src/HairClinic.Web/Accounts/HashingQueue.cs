using System.Threading.RateLimiting;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Slow hashes are computed a few at a time and never on every core: a flood of sign-ins does not stop the day's work.
/// </summary>
/// <remarks>
/// A hash takes about a tenth of a second, so the last of those who wait waits some three seconds. One turn is one try: never take a
/// turn within a turn.
/// </remarks>
public sealed class HashingQueue(int atOnce) : IDisposable
{
    public const int Waiting = 32;

    private readonly ConcurrencyLimiter _turns = new(new() { PermitLimit = atOnce, QueueLimit = Waiting });

    public HashingQueue()
        : this(Math.Max(1, Environment.ProcessorCount / 2)) { }

    /// <exception cref="TooBusyException">So many wait already that nothing was begun.</exception>
    public async Task<T> RunAsync<T>(Func<Task<T>> work, CancellationToken cancellation)
    {
        using var turn = await _turns.AcquireAsync(1, cancellation);
        return turn.IsAcquired ? await work() : throw new TooBusyException();
    }

    /// <exception cref="TooBusyException">So many wait already that nothing was begun.</exception>
    public Task<T> RunAsync<T>(Func<T> work, CancellationToken cancellation) => RunAsync(() => Task.FromResult(work()), cancellation);

    public void Dispose() => _turns.Dispose();
}

/// <summary>More passwords, PINs and codes are to be checked at this moment than the machine takes on; nothing was begun.</summary>
public sealed class TooBusyException() : Exception(Sentence)
{
    public const string Sentence = "Very many are signing in at this moment. Nothing was changed: try again in a moment.";
}
