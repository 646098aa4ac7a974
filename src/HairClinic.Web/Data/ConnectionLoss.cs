using Npgsql;

namespace HairClinic.Web.Data;

/// <summary>What a lost connection to the database is. Whoever must know asks here: EF wraps the same loss in many types.</summary>
public static class ConnectionLoss
{
    // Class 08 is the connection itself; 57P0x is a server that ends, restarts or is not up yet; 53300 has no connection left.
    private static readonly string[] States = ["08", "57P0", "53300"];

    /// <summary>
    /// Whether the book could not be reached, or was lost on the way: the same may be tried again in a moment. Whether what was sent
    /// was carried out is then not known, so it is sent again under its own key only.
    /// </summary>
    public static bool Is(Exception? fault) =>
        fault switch
        {
            null => false,
            PostgresException said => States.Any(s => said.SqlState.StartsWith(s, StringComparison.Ordinal)) || Is(said.InnerException),
            NpgsqlException { IsTransient: true } => true,
            AggregateException many => many.InnerExceptions.Any(Is),
            _ => Is(fault.InnerException),
        };
}
