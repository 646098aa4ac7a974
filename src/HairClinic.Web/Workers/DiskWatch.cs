using HairClinic.Web.Data;

namespace HairClinic.Web.Workers;

/// <summary>Says once a day in the log that the disk of the data is nearly full, before it is.</summary>
public sealed partial class DiskWatch(DataDisk disk, IClock clock, ILogger<DiskWatch> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(5);
    private static readonly Duration Day = Duration.FromDays(1);
    private Instant? _said;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        do WarnIfLow();
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    public void WarnIfLow()
    {
        var now = clock.GetCurrentInstant();
        if (disk.Measure() is not { IsLow: true } space)
            _said = null;
        else if (_said is not { } last || now - last >= Day)
        {
            _said = now;
            LogLow(log, space.FreeGigabytes);
        }
    }

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "The disk of the data folder has {Gigabytes:0.0} GB left. When it is full nothing can be saved: make room."
    )]
    private static partial void LogLow(ILogger logger, double gigabytes);
}
