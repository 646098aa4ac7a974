using HairClinic.Web.Data;

namespace HairClinic.Web.Shell.Logs;

/// <summary>While the database is away, asks each second whether it is back, and says so once.</summary>
public sealed partial class DatabaseRecoveryWatch(Outage outage, IServiceScopeFactory scopes, ILogger<DatabaseRecoveryWatch> log)
    : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            if (outage.Is && await IsBackAsync(stoppingToken))
                LogBack(log, outage.End().TotalSeconds);
        }
    }

    private async Task<bool> IsBackAsync(CancellationToken stoppingToken)
    {
        try
        {
            await using var scope = scopes.CreateAsyncScope();
            await using var db = scope.ServiceProvider.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
            if (!await db.Database.CanConnectAsync(stoppingToken))
                return false;
            // Connections of before lead nowhere; nobody should have to stumble over one each.
            if (db.Database.GetDbConnection() is NpgsqlConnection connection)
                NpgsqlConnection.ClearPool(connection);
            return true;
        }
        catch (Exception e) when (ConnectionLoss.Is(e))
        {
            return false;
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The database answers again, after {Seconds:0} s.")]
    private static partial void LogBack(ILogger logger, double seconds);
}
