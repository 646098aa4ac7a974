using HairClinic.Web.Practices;
using HairClinic.Web.Workers;

namespace HairClinic.Web.Shell.Logs;

/// <summary>
/// A log that keeps what went wrong and where, but not the words of an exception: they may quote what somebody typed, a row, or an
/// address, and who a client is belongs in no log.
/// </summary>
[ProviderAlias("Console")]
public sealed class DiscreetLog(ILoggerProvider inner) : ILoggerProvider, ISupportExternalScope
{
    private const string Database = "Microsoft.EntityFrameworkCore";

    public ILogger CreateLogger(string categoryName) =>
        new Logger(inner.CreateLogger(categoryName), isDatabase: categoryName.StartsWith(Database, StringComparison.Ordinal));

    public void SetScopeProvider(IExternalScopeProvider scopeProvider) => (inner as ISupportExternalScope)?.SetScopeProvider(scopeProvider);

    public void Dispose() => inner.Dispose();

    private sealed class Logger(ILogger inner, bool isDatabase) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => inner.BeginScope(state);

        public bool IsEnabled(LogLevel logLevel) => inner.IsEnabled(logLevel);

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        )
        {
            if (exception is null)
                inner.Log(logLevel, eventId, state, null, formatter);
            // Whoever is no longer who they signed in as is told so on their page, by whoever catches it: the database's no is no fault.
            else if (!isDatabase || exception is not ActorChangedException)
                inner.Log(logLevel, eventId, Without(formatter(state, exception), exception), null, (text, _) => text);
        }

        // Some messages carry the exception's words a second time.
        private static string Without(string message, Exception exception)
        {
            var places = new List<string>();
            for (var e = exception; e is not null; e = e.InnerException)
            {
                message = message.Replace(e.ToString(), WorkFaults.Name(e), StringComparison.Ordinal);
                if (e.Message.Length > 0)
                    message = message.Replace(e.Message, WorkFaults.Name(e), StringComparison.Ordinal);
                places.Add($"{WorkFaults.Name(e)}\n{e.StackTrace}");
            }
            return $"{message}\n{string.Join("\n from ", places)}";
        }
    }
}
