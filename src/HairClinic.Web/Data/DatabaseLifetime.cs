using HairClinic.EmbeddedPostgres;

namespace HairClinic.Web.Data;

/// <summary>
/// The database this program works on: the configured one, or a PostgreSQL of its own that it starts
/// and stops. Opened once, before anything else runs.
/// </summary>
public sealed class DatabaseLifetime(IConfiguration configuration, ILoggerFactory logs) : IAsyncDisposable
{
    private EmbeddedServer? _own;
    private DatabaseConnectionStrings? _connections;

    /// <exception cref="InvalidOperationException">Not opened yet.</exception>
    public DatabaseConnectionStrings Connections => _connections ?? throw new InvalidOperationException("The database is not open yet.");

    /// <summary>Starts the server if it is our own, brings the schema up to date, and checks that the fence can hold.</summary>
    public async Task OpenAsync(CancellationToken cancellation)
    {
        if (_connections is not null)
            return;
        var connections = DatabaseConnectionStrings.FromConfiguration(configuration);
        if (connections is null)
        {
            var folder = configuration["data"] ?? DefaultFolders.Data;
            _own = await EmbeddedServer.StartAsync(new(folder), logs.CreateLogger<EmbeddedServer>(), cancellation);
            connections = DatabaseConnectionStrings.FromEmbeddedServer(_own);
        }
        if (connections.Migrator is { } migrator)
            await SchemaMigrator.MigrateAsync(migrator, cancellation);
        else
            await SchemaMigrator.ThrowIfSchemaDiffersAsync(connections.Program, cancellation);
        await SchemaMigrator.RefuseStrongRoleAsync(connections.Program, cancellation);
        _connections = connections;
    }

    public async ValueTask DisposeAsync()
    {
        if (_own is not null)
            await _own.DisposeAsync();
    }
}
