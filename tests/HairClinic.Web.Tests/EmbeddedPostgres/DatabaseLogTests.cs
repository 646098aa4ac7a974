using HairClinic.EmbeddedPostgres;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

/// <summary>What the server writes down: what befell it, and nothing of what anybody typed.</summary>
public sealed class DatabaseLogTests
{
    private const string Told = "Jago Birchwater";

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    /// <summary>Each puts what was typed into the message, the detail, the context or the statement of an error, by PostgreSQL's own wording.</summary>
    private static readonly string[] Quoting =
    [
        $"select '{Told}'::uuid",
        $"select '{Told}'::date",
        $"insert into told values ('{Told}', 1)",
        "insert into told values ('Jago Birch', 0)",
        "insert into told values ('Jago Birch', null)",
        $"select * from \"{Told}\"",
        $"do $$ begin raise warning '{Told}'; end $$",
        $"do $$ begin raise exception '{Told}'; end $$",
        $"select 1 / 0 as \"{Told}\"",
        $"create table told_{Guid.Empty:N} (\"{Told}\" nonsense)",
    ];

    [Fact]
    public async Task What_was_typed_is_not_in_it_whoever_typed_it()
    {
        using var folder = new TestFolder();
        await using (var server = await StartAsync(folder))
        {
            var migrator = server.AsMigrator;
            await Sql.AskAsync(migrator, "create table told (code text primary key, number int not null check (number > 0))");
            await Sql.AskAsync(migrator, $"insert into told values ('{Told}', 1); grant all on told to public");
            string[] everybody = [server.AsProgram, migrator, server.AsKeeper, InClinic(server)];
            foreach (var somebody in everybody)
            foreach (var sql in Quoting)
                await SayAsync(somebody, sql);
            await AskWithParameterAsync(server.AsProgram);
        }
        var log = await File.ReadAllTextAsync(folder.LogFile, Token);
        Assert.DoesNotContain("Jago", log);
        Assert.DoesNotContain("Birch", log);
    }

    [Fact]
    public async Task What_befell_the_server_is_in_it_and_not_what_was_asked_at_that_moment()
    {
        using var folder = new TestFolder();
        await using (var server = await StartAsync(folder))
        {
            await EndAsync(server, process => Sql.AskAsync(InClinic(server), $"select pg_terminate_backend({process})"));
            var wrong = new NpgsqlConnectionStringBuilder(server.AsProgram) { Password = "wrong" }.ConnectionString;
            await Sql.RefusalAsync(wrong, "select 1");
            await EndAsync(
                server,
                process =>
                {
                    HeldServer.Kill(process);
                    return Task.CompletedTask;
                }
            );
        }
        var log = await File.ReadAllTextAsync(folder.LogFile, Token);
        foreach (
            var line in new[]
            {
                "database system is ready to accept connections",
                "FATAL:  terminating connection due to administrator command",
                "FATAL:  password authentication failed for user \"hairclinic_program\"",
                "was terminated by signal 9: Killed",
                "database system is shut down",
            }
        )
            Assert.Contains(line, log);
        Assert.DoesNotContain("Jago", log);
    }

    private static Task<EmbeddedServer> StartAsync(TestFolder folder) =>
        EmbeddedServer.StartAsync(folder.Options(), NullLogger.Instance, Token);

    /// <summary>The superuser in the program's database.</summary>
    private static string InClinic(EmbeddedServer server) =>
        new NpgsqlConnectionStringBuilder(server.Administrator) { Database = "hairclinic" }.ConnectionString;

    /// <summary>Refused or not: what counts is what the server wrote down.</summary>
    private static async Task SayAsync(string connection, string sql)
    {
        try
        {
            await Sql.AskAsync(connection, sql);
        }
        catch (PostgresException) { }
    }

    private static async Task AskWithParameterAsync(string connectionString)
    {
        await using var connection = new NpgsqlConnection(connectionString + ";Pooling=false");
        await connection.OpenAsync(Token);
        await using var command = new NpgsqlCommand("select $1::text::uuid", connection) { Parameters = { new() { Value = Told } } };
        await Assert.ThrowsAsync<PostgresException>(() => command.ExecuteScalarAsync(Token));
    }

    /// <summary>A long statement that holds what was typed, ended from outside while it runs.</summary>
    private static async Task EndAsync(EmbeddedServer server, Func<int, Task> end)
    {
        await using var connection = new NpgsqlConnection(server.AsProgram + ";Pooling=false");
        await connection.OpenAsync(Token);
        await using var command = new NpgsqlCommand($"select '{Told}', pg_sleep(60)", connection);
        var running = command.ExecuteScalarAsync(Token);
        await Task.Delay(300, Token);
        await end(connection.ProcessID);
        await Assert.ThrowsAnyAsync<NpgsqlException>(() => running);
    }
}
