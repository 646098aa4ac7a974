using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Mail;

/// <summary>Says once in the log, when the site listens, what stands between letters and their readers.</summary>
public sealed partial class MailStartupNotice(MailStatusMonitor status, IHostApplicationLifetime life, ILogger<MailStartupNotice> log)
    : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var listening = new TaskCompletionSource<bool>();
        await using var onStart = life.ApplicationStarted.Register(() => listening.TrySetResult(true));
        await using var onStop = stoppingToken.Register(() => listening.TrySetResult(false));
        if (!await listening.Task)
            return;
        try
        {
            var state = await status.CheckReadinessAsync(stoppingToken);
            if (state.Way is MailWay.None)
                LogNone(log);
            else if (state.Fault is { } fault)
                LogFault(log, fault);
            if (!state.KnowsAddress)
                LogAddress(log, SiteAddress.Setting.Replace(":", "__", StringComparison.Ordinal));
        }
        catch (Exception e) when (!stoppingToken.IsCancellationRequested)
        {
            LogFault(log, WorkFaults.NameOf(e));
        }
    }

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "No mail server is set (Mail__Host): letters are neither sent nor kept, and pages say so. See deploy/README.md, Letters."
    )]
    private static partial void LogNone(ILogger logger);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The mail server takes no letters now ({Fault}). See deploy/README.md, Letters.")]
    private static partial void LogFault(ILogger logger, string fault);

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "{Setting} is not set, and this site can be reached from beyond this machine: no link is sent until it is, such as https://book.example."
    )]
    private static partial void LogAddress(ILogger logger, string setting);
}
