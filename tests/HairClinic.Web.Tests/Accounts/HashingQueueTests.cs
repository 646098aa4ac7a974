using HairClinic.Web.Accounts;

namespace HairClinic.Web.Tests.Accounts;

public sealed class HashingQueueTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_few_at_once_some_wait_and_the_rest_are_sent_away_at_once()
    {
        using var turns = new HashingQueue(atOnce: 2);
        var (now, most) = (0, 0);
        var open = new TaskCompletionSource();
        var begun = Enumerable.Range(0, 2 + HashingQueue.Waiting).Select(_ => turns.RunAsync(HashAsync, Cancel)).ToList();

        await Assert.ThrowsAsync<TooBusyException>(() => turns.RunAsync(HashAsync, Cancel).WaitAsync(TimeSpan.FromSeconds(30), Cancel));
        open.SetResult();
        await Task.WhenAll(begun);

        Assert.Equal(2, most);
        // And there is room again.
        Assert.True(await turns.RunAsync(HashAsync, Cancel));

        async Task<bool> HashAsync()
        {
            most = Math.Max(most, Interlocked.Increment(ref now));
            await open.Task;
            Interlocked.Decrement(ref now);
            return true;
        }
    }

    [Fact]
    public async Task A_turn_that_breaks_is_given_back()
    {
        using var turns = new HashingQueue(atOnce: 1);

        for (var i = 0; i < 2 * HashingQueue.Waiting; i++)
            await Assert.ThrowsAsync<TimeoutException>(() => turns.RunAsync(Task<bool> () => throw new TimeoutException(), Cancel));

        Assert.True(await turns.RunAsync(() => true, Cancel));
    }

    [Fact]
    public async Task One_core_is_always_left_to_the_days_work()
    {
        using var turns = new HashingQueue();
        var open = new TaskCompletionSource<bool>();
        var begun = 0;
        var all = Enumerable
            .Range(0, HashingQueue.Waiting)
            .Select(_ =>
                turns.RunAsync(
                    () =>
                    {
                        Interlocked.Increment(ref begun);
                        return open.Task;
                    },
                    Cancel
                )
            )
            .ToList();

        Assert.InRange(begun, 1, Math.Max(1, Environment.ProcessorCount - 1));
        open.SetResult(true);
        await Task.WhenAll(all);
    }
}
