using System.Collections.Concurrent;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Workers;

/// <summary>
/// Looks for work each second, practice by practice, and has it done in lanes that go on beside one another. After a stumble it goes on.
/// </summary>
public sealed partial class PracticeWorkLoop(PracticeJobRunner jobs, SignInLinkSender answers, IClock clock, ILogger<PracticeWorkLoop> log)
    : BackgroundService
{
    /// <summary>So many in a row, and the place in the lane is free for another practice.</summary>
    private const int InARow = 10;

    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AnswerPause = TimeSpan.FromSeconds(2);

    private readonly Dictionary<WorkConcurrencyGroup, SemaphoreSlim> _places = WorkConcurrencyGroup.All.ToDictionary(
        l => l,
        l => new SemaphoreSlim(l.Width)
    );
    private readonly ConcurrentDictionary<(WorkConcurrencyGroup Lane, Guid Practice), bool> _underWay = new();

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll(AnswerAsync(stoppingToken), LookAsync(stoppingToken));

    private async Task AnswerAsync(CancellationToken stoppingToken)
    {
        while (await RestAsync(AnswerPause, stoppingToken))
        {
            var practices = await PracticesAsync(stoppingToken);
            await TryAsync(() => answers.SendPendingAsync(practices, stoppingToken), stoppingToken);
            foreach (var practice in practices)
                await TryAsync(
                    () =>
                        jobs.RunJobAsync(practice, "addresses", s => s.GetRequiredService<AddressChangeNotices>().RunAsync(stoppingToken)),
                    stoppingToken
                );
        }
    }

    private async Task LookAsync(CancellationToken stoppingToken)
    {
        for (var turn = 0; await RestAsync(Pause, stoppingToken); turn++)
        {
            var practices = await PracticesAsync(stoppingToken);
            // Each is the first in its turn: a lane that one practice fills has room for another's at the next look.
            for (var i = 0; i < practices.Count; i++)
            {
                var practice = practices[(i + turn) % practices.Count];
                await TryAsync(() => BeginAsync(practice, stoppingToken), stoppingToken);
            }
        }
        // What is under way hears of the stop as well, and writes down how far it came.
        foreach (var (lane, turns) in _places)
        {
            for (var i = 0; i < lane.Width; i++)
                await turns.WaitAsync(CancellationToken.None);
        }
    }

    private async Task BeginAsync(Guid practice, CancellationToken stoppingToken)
    {
        var due = await jobs.RunJobAsync(
            practice,
            "work",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await WorkQueue.CountDueAsync(db, clock.GetCurrentInstant(), stoppingToken);
            }
        );
        foreach (var lane in WorkConcurrencyGroup.All)
        {
            var most = lane.OneAPractice ? 1 : lane.Width;
            for (var n = due.Where(d => lane.Kinds.Contains(d.Key)).Sum(d => d.Value); n > 0 && most > 0; n--, most--)
            {
                if (
                    lane.OneAPractice && _underWay.ContainsKey((lane, practice))
                    || !await _places[lane].WaitAsync(0, CancellationToken.None)
                )
                    break;
                _underWay[(lane, practice)] = true;
                _ = DoAsync(lane, practice, stoppingToken);
            }
        }
    }

    private async Task DoAsync(WorkConcurrencyGroup lane, Guid practice, CancellationToken stoppingToken)
    {
        await TryAsync(
            async () =>
            {
                for (var n = 0; n < InARow; n++)
                {
                    if (
                        await jobs.RunJobAsync(
                            practice,
                            "work",
                            s => s.GetRequiredService<PracticeWorkRunner>().RunNextAsync(lane, stoppingToken)
                        ) == 0
                    )
                        return;
                }
            },
            stoppingToken
        );
        _underWay.TryRemove((lane, practice), out _);
        _places[lane].Release();
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
        // A site whose start failed is taken apart without a stop; its one sentence is not to drown in ours.
        catch (ObjectDisposedException e) when (e.ObjectName == nameof(IServiceProvider)) { }
        catch (Exception e)
        {
            LogStumble(log, e);
        }
    }

    private static async Task<bool> RestAsync(TimeSpan pause, CancellationToken stoppingToken)
    {
        await Task.Delay(pause, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        return !stoppingToken.IsCancellationRequested;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The work loop stumbled; it goes on.")]
    private static partial void LogStumble(ILogger logger, Exception error);
}
