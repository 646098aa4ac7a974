using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Workers;

/// <summary>
/// Applies each practice's rules on keeping that go by themselves, at night, once a day; clears up after erasures; letters in the folder go
/// after a week.
/// </summary>
public sealed partial class RetentionLoop(PracticeJobRunner jobs, ErasureVacuum erased, LetterFolder letters, ILogger<RetentionLoop> log)
    : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                letters.RemoveOld();
                foreach (var practice in await jobs.PracticeIdsAsync(stoppingToken))
                    await ApplyToPracticeAsync(practice, stoppingToken);
                if (await erased.VacuumIfDueAsync(stoppingToken))
                    LogSwept(log);
            }
            catch (Exception e) when (!stoppingToken.IsCancellationRequested)
            {
                LogStumble(log, e);
            }
        }
    }

    /// <returns>How many rows went.</returns>
    public async Task<int> ApplyToPracticeAsync(Guid practiceId, CancellationToken cancellation)
    {
        var gone = await jobs.RunJobAsync(
            practiceId,
            "keeping",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await services.GetRequiredService<RetentionEnforcer>().ApplyDueAsync(db, cancellation);
            }
        );
        if (gone > 0)
            LogGone(log, practiceId, gone);
        return gone;
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Practice {Practice}: {Rows} rows past their time were taken out.")]
    private static partial void LogGone(ILogger logger, Guid practice, int rows);

    [LoggerMessage(Level = LogLevel.Information, Message = "The tables were written anew without what erasures had left in them.")]
    private static partial void LogSwept(ILogger logger);

    [LoggerMessage(Level = LogLevel.Error, Message = "The nightly keeping stumbled; it goes on.")]
    private static partial void LogStumble(ILogger logger, Exception error);
}
