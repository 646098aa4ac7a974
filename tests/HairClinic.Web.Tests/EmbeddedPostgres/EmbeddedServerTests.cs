using System.Runtime.Versioning;
using HairClinic.EmbeddedPostgres;
using Microsoft.Extensions.Logging.Abstractions;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

public sealed class EmbeddedServerTests
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private static Task<EmbeddedServer> StartAsync(TestFolder folder, bool durable = false) =>
        EmbeddedServer.StartAsync(folder.Options(durable), NullLogger.Instance, Token);

    [Fact]
    public async Task What_was_written_is_there_after_a_clean_stop_and_a_new_start()
    {
        using var folder = new TestFolder();
        await using (var first = await StartAsync(folder, durable: true))
            await Sql.AskAsync(first.AsMigrator, "create table kept as select 'rebond' as word");
        Assert.Contains("database system is shut down", await File.ReadAllTextAsync(folder.LogFile, Token));
        Assert.False(File.Exists(Path.Combine(folder.Cluster, "postmaster.pid")));

        await using var second = await StartAsync(folder, durable: true);
        Assert.Equal("rebond", await Sql.AskAsync(second.AsMigrator, "select word from kept"));
    }

    [Fact]
    public async Task A_second_start_on_the_same_folder_is_refused_and_harms_nothing()
    {
        using var folder = new TestFolder();
        await using var first = await StartAsync(folder);
        var refusal = await Assert.ThrowsAsync<EmbeddedServerException>(() => StartAsync(folder));
        Assert.Contains("already running", refusal.Message);
        Assert.Contains(folder.Path, refusal.Message);
        Assert.Equal(1, await Sql.AskAsync(first.AsProgram, "select 1"));
    }

    [Fact]
    public async Task A_folder_too_deep_for_a_socket_still_works()
    {
        using var folder = new TestFolder(inner: new string('d', 60) + "/" + new string('e', 60));
        await using var server = await StartAsync(folder);
        Assert.Equal(1, await Sql.AskAsync(server.AsProgram, "select 1"));
    }

    [Fact]
    public async Task A_first_start_cut_short_is_begun_again()
    {
        using var folder = new TestFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "database.new", "base"));
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "database.new", "PG_VERSION"), "half", Token);
        await using var server = await StartAsync(folder);
        Assert.Equal(1, await Sql.AskAsync(server.AsProgram, "select 1"));
    }

    [Fact]
    public async Task A_folder_of_another_version_is_left_alone_and_the_missing_package_is_named()
    {
        using var folder = new TestFolder();
        Directory.CreateDirectory(folder.Cluster);
        await File.WriteAllTextAsync(Path.Combine(folder.Cluster, "PG_VERSION"), "14\n", Token);
        var refusal = await Assert.ThrowsAsync<EmbeddedServerException>(() => StartAsync(folder));
        Assert.Contains("made by PostgreSQL 14", refusal.Message);
        Assert.Contains("apt-get install postgresql-14", refusal.Message);
        Assert.Equal(["PG_VERSION"], Directory.GetFileSystemEntries(folder.Cluster).Select(Path.GetFileName));
    }

    [Fact]
    public async Task A_lost_password_file_is_said_plainly()
    {
        using var folder = new TestFolder();
        await (await StartAsync(folder)).DisposeAsync();
        File.Delete(Path.Combine(folder.Path, "database.passwords"));
        var refusal = await Assert.ThrowsAsync<EmbeddedServerException>(() => StartAsync(folder));
        Assert.Contains("database.passwords is missing", refusal.Message);
    }

    [Fact]
    [SupportedOSPlatform("linux")]
    public async Task Everything_the_database_keeps_is_closed_to_others()
    {
        using var folder = new TestFolder();
        await using var server = await StartAsync(folder);
        const UnixFileMode others = (UnixFileMode)0b111_111;
        foreach (var name in new[] { "database", "database.lock", "database.log", "database.passwords", "socket" })
        {
            var mode = File.GetUnixFileMode(Path.Combine(folder.Path, name));
            Assert.True((mode & others) == 0, $"{name} is {mode}");
        }
    }

    [Fact]
    public async Task A_server_that_cannot_start_says_why()
    {
        using var folder = new TestFolder();
        await (await StartAsync(folder)).DisposeAsync();
        await File.AppendAllTextAsync(Path.Combine(folder.Cluster, "postgresql.conf"), "\nmax_connections = many\n", Token);
        var refusal = await Assert.ThrowsAsync<EmbeddedServerException>(() => StartAsync(folder));
        Assert.Contains("max_connections", refusal.Message);
    }
}
