using HairClinic.Web.Practices;

namespace HairClinic.Web.Workers;

/// <summary>Looks for work every few seconds, practice by practice, and after a stumble goes on.</summary>
public sealed partial class WorkLoop(PracticeJobs jobs, ILogger<WorkLoop> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                foreach (var practice in await jobs.PracticeIdsAsync(stoppingToken))
                    await jobs.RunAsync(practice, "work", s => s.GetRequiredService<PracticeWork>().RunAsync(stoppingToken));
            }
            catch (Exception e) when (e is not OperationCanceledException)
            {
                LogStumble(log, e);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The work loop stumbled; it goes on.")]
    private static partial void LogStumble(ILogger logger, Exception e);
}
