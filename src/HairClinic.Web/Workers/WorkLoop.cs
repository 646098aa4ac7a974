using System.Collections.Concurrent;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Workers;

/// <summary>
/// Looks for work each second, in lanes that go on beside one another: of every practice in turn one item, as many at once as the lane is
/// wide. After a stumble it goes on.
/// </summary>
public sealed partial class WorkLoop(PracticeJobs jobs, LinkAnswers answers, ILogger<WorkLoop> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll([AnswerAsync(stoppingToken), .. WorkLane.All.Select(lane => GoOnAsync(lane, stoppingToken))]);

    private async Task AnswerAsync(CancellationToken stoppingToken)
    {
        while (await RestAsync(stoppingToken))
        {
            var practices = await PracticesAsync(stoppingToken);
            await TryAsync(() => answers.RunAsync(practices, stoppingToken), stoppingToken);
            foreach (var practice in practices)
                await TryAsync(
                    () => jobs.RunAsync(practice, "addresses", s => s.GetRequiredService<AddressLetters>().RunAsync(stoppingToken)),
                    stoppingToken
                );
        }
    }

    private async Task GoOnAsync(WorkLane lane, CancellationToken stoppingToken)
    {
        using var turns = new SemaphoreSlim(lane.Width);
        var underWay = new ConcurrentDictionary<Guid, bool>();
        while (await RestAsync(stoppingToken))
        {
            var practices = await PracticesAsync(stoppingToken);
            for (var more = true; more && !stoppingToken.IsCancellationRequested; )
            {
                more = false;
                foreach (var practice in practices.Where(p => !underWay.ContainsKey(p)))
                    more |= await BeginAsync(practice);
            }
        }
        // What is under way hears of the stop as well, and writes down how far it came.
        for (var i = 0; i < lane.Width; i++)
            await turns.WaitAsync(CancellationToken.None);

        // Returns when it is known whether there was an item; the item itself goes on.
        async Task<bool> BeginAsync(Guid practice)
        {
            await turns.WaitAsync(CancellationToken.None);
            if (lane.OneAPractice)
                underWay[practice] = true;
            var taken = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
            _ = DoAsync(practice, taken);
            return await taken.Task;
        }

        async Task DoAsync(Guid practice, TaskCompletionSource<bool> taken)
        {
            await TryAsync(
                () =>
                    jobs.RunAsync(
                        practice,
                        "work",
                        s => s.GetRequiredService<PracticeWork>().RunNextAsync(lane, () => taken.TrySetResult(true), stoppingToken)
                    ),
                stoppingToken
            );
            underWay.TryRemove(practice, out _);
            turns.Release();
            taken.TrySetResult(false);
        }
    }

    private async Task<IReadOnlyList<Guid>> PracticesAsync(CancellationToken stoppingToken)
    {
        IReadOnlyList<Guid> practices = [];
        await TryAsync(async () => practices = await jobs.PracticeIdsAsync(stoppingToken), stoppingToken);
        return practices;
    }

    // One practice's trouble must not keep the others waiting.
    private async Task TryAsync(Func<Task> work, CancellationToken stoppingToken)
    {
        try
        {
            await work();
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested) { }
        catch (Exception e)
        {
            LogStumble(log, e);
        }
    }

    private static async Task<bool> RestAsync(CancellationToken stoppingToken)
    {
        await Task.Delay(Pause, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        return !stoppingToken.IsCancellationRequested;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The work loop stumbled; it goes on.")]
    private static partial void LogStumble(ILogger logger, Exception error);
}
