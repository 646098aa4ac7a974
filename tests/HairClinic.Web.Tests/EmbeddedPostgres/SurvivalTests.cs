using System.Diagnostics;
using System.Globalization;
using HairClinic.EmbeddedPostgres;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

/// <summary>Real processes, really killed.</summary>
public sealed class SurvivalTests
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_kill_9_of_the_program_the_server_stops_cleanly_within_seconds()
    {
        using var folder = new TestFolder();
        using var held = await HeldServer.StartAsync(folder, Token);
        var since = Stopwatch.StartNew();
        held.KillProgram();
        while (File.Exists(Path.Combine(folder.Cluster, "postmaster.pid")) && since.Elapsed < TimeSpan.FromSeconds(10))
            await Task.Delay(50, Token);
        Assert.InRange(since.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(5));
        Assert.Contains("database system is shut down", await File.ReadAllTextAsync(folder.LogFile, Token));
    }

    [Theory]
    [InlineData("the program")]
    [InlineData("the program and the guard: the server is orphaned")]
    [InlineData("the program, the guard and the server")]
    public async Task After_kill_9_the_next_start_has_every_committed_row(string killed)
    {
        using var folder = new TestFolder();
        using (var held = await HeldServer.StartAsync(folder, Token))
        {
            await Sql.AskAsync(held.Connection, "create table bonds as select generate_series(1, 1000) as number");
            if (killed.Contains("guard"))
                held.KillGuard();
            if (killed.EndsWith("and the server", StringComparison.Ordinal))
                held.KillServer();
            held.KillProgram();
        }
        await using var next = await EmbeddedServer.StartAsync(folder.Options(), NullLogger.Instance, Token);
        Assert.Equal(1000L, await Sql.AskAsync(next.AsMigrator, "select count(*) from bonds"));
    }

    [Fact]
    public async Task A_number_left_by_a_killed_server_and_taken_by_another_process_does_not_stop_a_start()
    {
        using var folder = new TestFolder();
        await (await EmbeddedServer.StartAsync(folder.Options(), NullLogger.Instance, Token)).DisposeAsync();
        var ours = Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        await File.WriteAllTextAsync(Path.Combine(folder.Cluster, "postmaster.pid"), $"{ours}\n{folder.Cluster}\n0\n5432\n\n\n\n", Token);
        await using var server = await EmbeddedServer.StartAsync(folder.Options(), NullLogger.Instance, Token);
        Assert.Equal(1, await Sql.AskAsync(server.AsProgram, "select 1"));
    }

    [Fact]
    public async Task A_killed_server_is_started_again_while_the_program_lives()
    {
        using var folder = new TestFolder();
        var options = folder.Options() with { FirstPause = TimeSpan.FromMilliseconds(100) };
        await using var server = await EmbeddedServer.StartAsync(options, NullLogger.Instance, Token);
        await Sql.AskAsync(server.AsMigrator, "create table kept as select 'rebond' as word");
        foreach (var _ in new[] { "once", "and again" })
        {
            HeldServer.Kill(HeldServer.MainProcess(folder));
            Assert.Equal("rebond", await AskUntilAnsweredAsync(server.AsMigrator, "select word from kept"));
        }
    }

    [Fact]
    public async Task A_program_that_stops_while_its_server_is_down_does_not_hang()
    {
        using var folder = new TestFolder();
        var server = await EmbeddedServer.StartAsync(
            folder.Options() with
            {
                FirstPause = TimeSpan.FromMinutes(5),
            },
            NullLogger.Instance,
            Token
        );
        HeldServer.Kill(HeldServer.MainProcess(folder));
        await server.DisposeAsync().AsTask().WaitAsync(TimeSpan.FromSeconds(10), Token);
    }

    private static async Task<object?> AskUntilAnsweredAsync(string connection, string sql)
    {
        var since = Stopwatch.StartNew();
        while (true)
        {
            await Task.Delay(100, Token);
            try
            {
                return await Sql.AskAsync(connection, sql);
            }
            catch (NpgsqlException) when (since.Elapsed < TimeSpan.FromSeconds(30)) { }
        }
    }
}
