using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Workers;

/// <summary>Looks for work every few seconds, practice by practice, and after a stumble goes on.</summary>
public sealed partial class WorkLoop(PracticeJobs jobs, LinkAnswers answers, ILogger<WorkLoop> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            var practices = await PracticesAsync(stoppingToken);
            await TryAsync(() => answers.RunAsync(practices, stoppingToken), stoppingToken);
            foreach (var practice in practices)
            {
                await TryAsync(
                    () => jobs.RunAsync(practice, "addresses", s => s.GetRequiredService<AddressLetters>().RunAsync(stoppingToken)),
                    stoppingToken
                );
                await TryAsync(
                    () => jobs.RunAsync(practice, "work", s => s.GetRequiredService<PracticeWork>().RunAsync(stoppingToken)),
                    stoppingToken
                );
            }
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
        catch (Exception e) when (!stoppingToken.IsCancellationRequested)
        {
            LogStumble(log, WorkFaults.Name(e));
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The work loop stumbled ({Error}); it goes on.")]
    private static partial void LogStumble(ILogger logger, string error);
}
