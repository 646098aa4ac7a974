namespace HairClinic.Web.Data;

/// <summary>Recognises a lost connection to the database, which EF wraps in many types.</summary>
public static class ConnectionLoss
{
    // Class 08 is the connection itself; 57P0x is a server that ends, restarts or is not up yet; 53300 has no connection left.
    private static readonly string[] States = ["08", "57P0", "53300"];

    /// <summary>
    /// Whether the database could not be reached, or the connection broke: it can be tried again in a moment. It is not known whether
    /// the write was carried out, so it is only sent again under its own key.
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
