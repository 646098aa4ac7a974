using System.Net.Sockets;
using Npgsql;

namespace HairClinic.Web.Data;

/// <summary>What a lost, refused or full database looks like, whatever wraps it on its way up.</summary>
public static class LostConnection
{
    public static bool Is(Exception? e) =>
        e switch
        {
            null => false,
            AggregateException many => many.InnerExceptions.Any(Is),
            PostgresException said => IsAway(said.SqlState),
            NpgsqlException { InnerException: IOException or SocketException or TimeoutException } => true,
            _ => Is(e.InnerException),
        };

    // Shut down, crashed or not up yet; no connection left; the line itself (class 08).
    private static bool IsAway(string state) =>
        state
            is PostgresErrorCodes.AdminShutdown
                or PostgresErrorCodes.CrashShutdown
                or PostgresErrorCodes.CannotConnectNow
                or PostgresErrorCodes.TooManyConnections
        || state.StartsWith("08", StringComparison.Ordinal);
}
