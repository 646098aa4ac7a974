using HairClinic.Web.Data;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Workers;

/// <summary>Sees to it that every practice is calculated once a night, and that what somebody asks for by hand begins soon.</summary>
public sealed partial class RecalculationLoop(PracticeJobRunner jobs, IClock clock, ILogger<RecalculationLoop> log) : BackgroundService
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
                    await jobs.RunJobAsync(practice, "recalculation", services => RecalculateAsync(services, stoppingToken));
            }
            catch (Exception e) when (!stoppingToken.IsCancellationRequested)
            {
                LogStumble(log, e);
            }
        }
    }

    private async Task<bool> RecalculateAsync(IServiceProvider services, CancellationToken cancellation)
    {
        await using (var db = services.GetRequiredService<ClinicDbFactory>().Open())
            await RecalculationQueue.RequestNightlyIfDueAsync(db, clock.GetCurrentInstant(), cancellation);
        var done = await services.GetRequiredService<RecalculationRunner>().RunAsync(cancellation);
        return await services.GetRequiredService<PastReplayRunner>().RunAsync(afterRun: done, cancellation) || done;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The calculation failed; it is tried again.")]
    private static partial void LogStumble(ILogger logger, Exception error);
}
