using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;
using Microsoft.AspNetCore.Connections;

namespace HairClinic.Web.Shell.Logs;

/// <summary>
/// A log that keeps what went wrong and where, but not the words of an exception: they may quote what somebody typed, a row, or an
/// address, and who a client is belongs in no log. A database that is away is one line of it, whoever stumbles over that.
/// </summary>
[ProviderAlias("Console")]
public sealed partial class DiscreetLog(ILoggerProvider inner, Outage? outage = null) : ILoggerProvider, ISupportExternalScope
{
    private const string Database = "Microsoft.EntityFrameworkCore";
    private const string Host = "Microsoft.Extensions.Hosting.Internal.Host";

    public ILogger CreateLogger(string categoryName) => new Logger(inner.CreateLogger(categoryName), categoryName, IsTold);

    public void SetScopeProvider(IExternalScopeProvider scopeProvider) => (inner as ISupportExternalScope)?.SetScopeProvider(scopeProvider);

    public void Dispose() => inner.Dispose();

    /// <summary>Whether this need not be written down: it is told elsewhere, once and in better words.</summary>
    private bool IsTold(string category, Exception e)
    {
        if (outage is null || !ConnectionLoss.Is(e))
            return IsAllowedFor(category, e) || IsTakenPort(category, e);
        if (outage.Begin())
            LogAway(inner.CreateLogger(typeof(Outage).FullName!), WorkFaults.NameOf(e.GetBaseException()));
        return true;
    }

    /// <summary>
    /// The database's no that whoever asked calculates with: whoever is no longer who they signed in as is told so on their page, and of two
    /// who want the same place or name, or change the same row, one is told that the other was first. Where nobody does calculate with it,
    /// it comes to whoever writes down what nobody caught.
    /// </summary>
    private static bool IsAllowedFor(string category, Exception e) =>
        category.StartsWith(Database, StringComparison.Ordinal)
        && (
            e is StaleActorException or DbUpdateConcurrencyException
            || e is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation or PostgresErrorCodes.ExclusionViolation }
            || e.InnerException is { } inner && IsAllowedFor(category, inner)
        );

    // Whoever starts the program is told in a sentence that the port is taken; what had begun behind the screens is only stopped again.
    private static bool IsTakenPort(string category, Exception e) =>
        e.InnerException is AddressInUseException || category == Host && e is OperationCanceledException;

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "The database cannot be reached ({Fault}), and pages say so. That it is back is the next line on it."
    )]
    private static partial void LogAway(ILogger logger, string fault);

    private sealed class Logger(ILogger inner, string category, Func<string, Exception, bool> isTold) : ILogger
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
            else if (!isTold(category, exception))
                inner.Log(logLevel, eventId, Without(formatter(state, exception), exception), null, (text, _) => text);
        }

        // Some messages carry the exception's words a second time.
        private static string Without(string message, Exception exception)
        {
            var places = new List<string>();
            for (var e = exception; e is not null; e = e.InnerException)
            {
                message = message.Replace(e.ToString(), WorkFaults.NameOf(e), StringComparison.Ordinal);
                if (e.Message.Length > 0)
                    message = message.Replace(e.Message, WorkFaults.NameOf(e), StringComparison.Ordinal);
                places.Add($"{WorkFaults.NameOf(e)}\n{e.StackTrace}");
            }
            return $"{message}\n{string.Join("\n from ", places)}";
        }
    }
}
