using System.Data.Common;
using HairClinic.EmbeddedPostgres;

namespace HairClinic.Web.Data;

/// <summary>The ways into the database, one per role (see "The fence" in DEVELOPERS.md).</summary>
/// <param name="Program">The role the site works as: owns nothing, bypasses nothing.</param>
/// <param name="Migrator">Owns the schema. Null with an outside database that is migrated by hand.</param>
/// <param name="Keeper">Reads everything, writes nothing: backups and restore checks.</param>
public sealed record DatabaseConnectionStrings(string Program, string? Migrator, string? Keeper)
{
    /// <summary>Per program: leaves room for the other roles under a server's usual 100.</summary>
    public const int MostConnections = EmbeddedServerOptions.MostConnections;

    private static readonly string[] PoolSizes = ["Maximum Pool Size", "MaxPoolSize"];

    public static DatabaseConnectionStrings FromEmbeddedServer(EmbeddedServer own) => new(own.AsProgram, own.AsMigrator, own.AsKeeper);

    /// <summary>
    /// The outside database named by <c>ConnectionStrings:Program</c>, <c>:Migrator</c> and <c>:Keeper</c>
    /// (in the environment <c>ConnectionStrings__Program</c> ...), or null when none is named and the program runs its own.
    /// </summary>
    /// <exception cref="InvalidOperationException">A string is missing or unusable; the message says which and why.</exception>
    public static DatabaseConnectionStrings? FromConfiguration(IConfiguration configuration)
    {
        var program = Read(configuration, nameof(Program));
        var migrator = Read(configuration, nameof(Migrator));
        var keeper = Read(configuration, nameof(Keeper));
        if (program is not null)
            return new(Bounded(program), migrator, keeper);
        if (migrator is not null || keeper is not null)
            throw new InvalidOperationException(
                "ConnectionStrings:Program is missing: the site works as the program role, so its connection string is needed beside the others."
            );
        return null;
    }

    /// <summary>
    /// As the program uses it: statements that come again stay prepared on their connection, because planning one through its row
    /// policies takes longer than running it. The pool still resets a connection that goes back, so the actor goes with it.
    /// </summary>
    public static string WithAutoPrepare(string program) =>
        new NpgsqlConnectionStringBuilder(program) { MaxAutoPrepare = 100, AutoPrepareMinUsages = 2 }.ConnectionString;

    /// <summary>
    /// No more connections than the server has room for beside the other roles, unless the string names another number: a caller
    /// waits for a free one instead of being refused by the server.
    /// </summary>
    private static string Bounded(string text)
    {
        var named = new DbConnectionStringBuilder { ConnectionString = text };
        return PoolSizes.Any(named.ContainsKey)
            ? text
            : new NpgsqlConnectionStringBuilder(text) { MaxPoolSize = MostConnections }.ConnectionString;
    }

    private static string? Read(IConfiguration configuration, string role)
    {
        var text = configuration.GetConnectionString(role);
        if (string.IsNullOrWhiteSpace(text))
            return null;
        try
        {
            if (!new NpgsqlConnectionStringBuilder(text).NoResetOnClose)
                return text;
        }
        // The text holds a password, and the parser's message may quote it.
        catch (Exception e) when (e is ArgumentException or FormatException)
        {
            throw new InvalidOperationException($"ConnectionStrings:{role} cannot be read as a PostgreSQL connection string.");
        }
        throw new InvalidOperationException(
            $"ConnectionStrings:{role} says 'No Reset On Close=true'. A pooled connection would then keep the previous practice's settings and show its rows to the next one. Remove it."
        );
    }
}
