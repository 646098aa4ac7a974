using Microsoft.Extensions.Logging.Console;

namespace HairClinic.Web.Shell.Logs;

public static class LogSetup
{
    /// <summary>The console and nothing else, in UTC and in plain lines or, for machines, <c>Logging:Console:FormatterName=json</c>.</summary>
    public static ILoggingBuilder AddDiscreetConsole(this ILoggingBuilder logging)
    {
        logging.ClearProviders().AddConsole();
        logging.Services.Remove(logging.Services.Single(s => s.ServiceType == typeof(ILoggerProvider)));
        logging.Services.AddSingleton<ConsoleLoggerProvider>();
        logging.Services.AddSingleton<ILoggerProvider>(sp => new DiscreetLog(
            sp.GetRequiredService<ConsoleLoggerProvider>(),
            sp.GetRequiredService<Outage>()
        ));
        return logging.SilenceRequestUrls();
    }

    /// <summary>Addresses as they were asked for hold sign-in links and searched names; whatever the settings say, they are not written down.</summary>
    public static ILoggingBuilder SilenceRequestUrls(this ILoggingBuilder logging) =>
        logging
            .AddFilter("Microsoft.AspNetCore.Hosting.Diagnostics", LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.HttpLogging", LogLevel.None)
            .AddFilter("Microsoft.AspNetCore.Server.Kestrel.BadRequests", LogLevel.Information);
}
