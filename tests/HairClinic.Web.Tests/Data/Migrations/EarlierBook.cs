using HairClinic.Web.Data;
using HairClinic.Web.Tests.EmbeddedPostgres;
using HairClinic.Web.Tests.Layout;
using Npgsql;

namespace HairClinic.Web.Tests.Data.Migrations;

/// <summary>A database as earlier versions of the program left it, laid by the scripts of then.</summary>
internal sealed class EarlierBook : IAsyncDisposable
{
    private readonly PgServer _server;
    private readonly string _name = $"earlier_{Guid.NewGuid():N}";

    private EarlierBook(PgServer server) => _server = server;

    public string Migrator => In(_server.Connections.Migrator!);

    public string Administrator => In(_server.Administrator);

    /// <param name="scripts">Of the folder Earlier, without their ending.</param>
    public static async Task<EarlierBook> LayAsync(PgServer server, params string[] scripts)
    {
        var book = new EarlierBook(server);
        await Sql.AskAsync(server.Administrator, $"create database {book._name} owner hairclinic_migrator template template0");
        foreach (var script in scripts)
        {
            var path = Path.Combine(SourceTree.WebTests, "Data", "Migrations", "Earlier", script + ".sql");
            await Sql.AskAsync(book.Migrator, await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
        }
        return book;
    }

    public ClinicDb Open() => new(ClinicDbOptions.For(Migrator));

    public async Task<List<string>> ReadAsync(string sql)
    {
        var token = TestContext.Current.CancellationToken;
        await using var connection = new NpgsqlConnection(Administrator);
        await connection.OpenAsync(token);
        await using var command = new NpgsqlCommand(sql, connection);
        await using var reader = await command.ExecuteReaderAsync(token);
        List<string> rows = [];
        while (await reader.ReadAsync(token))
            rows.Add(reader.GetString(0));
        return rows;
    }

    public async ValueTask DisposeAsync() => await Sql.AskAsync(_server.Administrator, $"drop database {_name} with (force)");

    private string In(string connectionString) =>
        new NpgsqlConnectionStringBuilder(connectionString) { Database = _name, Pooling = false }.ConnectionString;
}
