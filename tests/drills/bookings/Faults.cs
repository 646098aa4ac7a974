using System.Net.Sockets;
using Npgsql;

namespace HairClinic.BookingDrill;

/// <summary>Faults after which nobody knows whether a write was made: it is sent again with its key.</summary>
internal static class Faults
{
    public static bool AreTransient(Exception e)
    {
        for (var cause = e; cause is not null; cause = cause.InnerException)
        {
            switch (cause)
            {
                case PostgresException { SqlState: var state }:
                    return state.StartsWith("57P", StringComparison.Ordinal)
                        || state.StartsWith("08", StringComparison.Ordinal)
                        || state is "40P01" or "53300";
                case NpgsqlException or SocketException or IOException or HttpRequestException or TaskCanceledException or TimeoutException:
                    return true;
            }
        }
        return false;
    }

    public static Exception Innermost(Exception e) => e.InnerException is { } inner ? Innermost(inner) : e;
}
