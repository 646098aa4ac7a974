using HairClinic.EmbeddedPostgres;
using HairClinic.Web.Data;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace HairClinic.Web.Tests;

/// <summary>One PostgreSQL server for all tests of this assembly. Each test makes its own practice in it; nothing is cleaned up.</summary>
public sealed class PgServer : IAsyncLifetime
{
    private readonly TestFolder _folder = new();
    private EmbeddedServer? _server;

    /// <summary>A database with the schema and nothing in it, to copy for a site of one's own.</summary>
    public const string SiteTemplate = "site_template";

    /// <summary>The three ways in, to the database all tests share.</summary>
    public DatabaseConnectionStrings Connections => DatabaseConnectionStrings.FromEmbeddedServer(Server);

    /// <summary>The superuser, for the few tests that need a database of their own.</summary>
    public string Administrator => Server.Administrator;

    /// <summary>The master keys of the database all tests share.</summary>
    public string KeyFile => Path.Combine(_folder.Path, "keys", "master.json");

    /// <summary>Where sealed files of clients lie.</summary>
    public string FilesFolder => Path.Combine(_folder.Path, "files");

    /// <summary>Where letters lie that no test takes.</summary>
    public string MailFolder => Path.Combine(_folder.Path, "mail");

    private EmbeddedServer Server => _server ?? throw new InvalidOperationException("The test server has not been started.");

    public async ValueTask InitializeAsync()
    {
        _server = await EmbeddedServer.StartAsync(_folder.Options(), NullLogger.Instance);
        await SchemaMigrator.MigrateAsync(Connections.Migrator!, CancellationToken.None);
        await using var administrator = new NpgsqlConnection(Administrator);
        await administrator.OpenAsync();
        await using var make = new NpgsqlCommand(
            $"create database {SiteTemplate} owner hairclinic_migrator template template0",
            administrator
        );
        await make.ExecuteNonQueryAsync();
        // Without a pool: a database is copied only while nobody is connected to it.
        var template = new NpgsqlConnectionStringBuilder(Connections.Migrator!) { Database = SiteTemplate, Pooling = false };
        await SchemaMigrator.MigrateAsync(template.ConnectionString, CancellationToken.None);
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null)
            await _server.DisposeAsync();
        _folder.Dispose();
    }
}
