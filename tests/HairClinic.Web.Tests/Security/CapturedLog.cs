using System.Collections.Concurrent;
using HairClinic.Web.Shell.Logs;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace HairClinic.Web.Tests.Security;

/// <summary>Everything the program would write down, as it would write it: through the same discreet log as the console.</summary>
public sealed class CapturedLog : ILoggerProvider
{
    private readonly ConcurrentQueue<string> _lines = new();

    public IReadOnlyCollection<string> Lines => _lines;

    public void Catch(IWebHostBuilder builder) =>
        builder.ConfigureLogging(logging =>
        {
            logging.ClearProviders().SetMinimumLevel(LogLevel.Information).SilenceRequestUrls();
            logging.Services.AddSingleton<ILoggerProvider>(sp => new DiscreetLog(this, sp.GetRequiredService<Outage>()));
            // More than is written by default, and all of our own.
            logging.AddFilter("Microsoft", LogLevel.Information).AddFilter("Microsoft.AspNetCore", LogLevel.Information);
            logging.AddFilter("Microsoft.EntityFrameworkCore", LogLevel.Information).AddFilter("HairClinic", LogLevel.Debug);
        });

    /// <summary>Faults alone: what a test tells when an answer was 500.</summary>
    public void CatchFaults(IWebHostBuilder builder) =>
        builder.ConfigureLogging(logging =>
            logging.ClearProviders().AddProvider(this).SetMinimumLevel(LogLevel.Error).SilenceRequestUrls()
        );

    public ILogger CreateLogger(string categoryName) => new Logger(categoryName, _lines);

    public void Dispose() { }

    private sealed class Logger(string category, ConcurrentQueue<string> lines) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        ) => lines.Enqueue($"{category}: {formatter(state, exception)} {exception}");
    }
}
