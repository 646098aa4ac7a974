using Microsoft.Extensions.Caching.Memory;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Each wrong try makes the next one under the same name wait longer, whether or not anybody has that name: guessing becomes slow long
/// before an account is locked, and the waiting does not reveal which names exist.
/// </summary>
public sealed class SignInDelay : IDisposable
{
    private const int Free = 3;
    private static readonly TimeSpan First = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Remembered = TimeSpan.FromMinutes(10);

    // Names are whatever strangers type: only so many are kept.
    private readonly MemoryCache _tries = new(new MemoryCacheOptions { SizeLimit = 20_000 });

    public Task WaitAsync(string name, CancellationToken cancellation) => Task.Delay(DelayFor(name), cancellation);

    public TimeSpan DelayFor(string name) =>
        Count(name) is var count && count < Free ? TimeSpan.Zero
        : First * Math.Pow(2, Math.Min(count - Free, 10)) is var wait && wait < Longest ? wait
        : Longest;

    public void Failed(string name)
    {
        lock (_tries)
            _tries.Set(Key(name), Count(name) + 1, new MemoryCacheEntryOptions { Size = 1, AbsoluteExpirationRelativeToNow = Remembered });
    }

    public void Forget(string name) => _tries.Remove(Key(name));

    public void Dispose() => _tries.Dispose();

    private int Count(string name) => _tries.TryGetValue(Key(name), out int count) ? count : 0;

    private static string Key(string name) => name.Trim().ToUpperInvariant();
}
