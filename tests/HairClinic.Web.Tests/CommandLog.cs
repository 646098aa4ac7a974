using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace HairClinic.Web.Tests;

/// <summary>Keeps every SQL command that was executed, so that a test can count round trips.</summary>
public sealed class CommandLog : ILoggerProvider, ILogger
{
    private const string Category = "Microsoft.EntityFrameworkCore.Database.Command";
    private const int CommandExecuted = 20101;

    private readonly ConcurrentQueue<string> _commands = new();

    public IReadOnlyCollection<string> All => _commands;

    public void Clear() => _commands.Clear();

    public ILogger CreateLogger(string categoryName) =>
        categoryName == Category ? this : Microsoft.Extensions.Logging.Abstractions.NullLogger.Instance;

    public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Information;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public void Log<TState>(
        LogLevel logLevel,
        EventId eventId,
        TState state,
        Exception? exception,
        Func<TState, Exception?, string> formatter
    )
    {
        if (eventId.Id == CommandExecuted)
            _commands.Enqueue(formatter(state, exception));
    }

    public void Dispose() { }
}
