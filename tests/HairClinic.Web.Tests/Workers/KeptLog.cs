using Microsoft.Extensions.Logging;

namespace HairClinic.Web.Tests.Workers;

/// <summary>Keeps what was logged, exceptions with all they say.</summary>
internal sealed class KeptLog<T> : ILogger<T>
{
    public List<string> Lines { get; } = [];

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(
        LogLevel logLevel,
        EventId eventId,
        TState state,
        Exception? exception,
        Func<TState, Exception?, string> formatter
    ) => Lines.Add($"{formatter(state, exception)} {exception}");
}
