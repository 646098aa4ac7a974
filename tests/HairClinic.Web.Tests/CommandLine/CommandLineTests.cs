using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Npgsql;

namespace HairClinic.Web.Tests.CommandLine;

/// <summary>The program from outside: what stands in its way is said in a sentence.</summary>
public sealed class CommandLineTests(PgServer server)
{
    [Fact]
    public async Task A_database_that_is_not_there_is_one_sentence()
    {
        var (code, said) = await RunAsync(["export", "--out", "/tmp/none"], "Host=127.0.0.1;Port=9;Username=u;Password=secret;Database=d");

        Assert.Equal(1, code);
        Assert.StartsWith("The database cannot be reached: ", Assert.Single(said));
    }

    [Fact]
    public async Task A_database_nobody_migrated_is_one_sentence_for_every_verb()
    {
        var name = $"empty_{Guid.NewGuid():N}";
        await Sql.AskAsync(server.Administrator, $"create database {name} template template0");
        var program = new NpgsqlConnectionStringBuilder(server.Connections.Program) { Database = name }.ConnectionString;

        foreach (var verb in new[] { "serve", "verify-log" })
        {
            var (code, said) = await RunAsync([verb], program);
            Assert.Equal((verb, 1), (verb, code));
            Assert.StartsWith("The database is at version", Assert.Single(said));
        }
    }

    [Fact]
    public async Task A_port_that_is_taken_is_one_sentence()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var address = $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}";

        var (code, said) = await RunAsync(["serve", "--urls", address], server.Connections.Program);

        Assert.Equal(1, code);
        var sentence = Assert.Single(said, l => !l.Contains("info:", StringComparison.Ordinal));
        Assert.StartsWith($"Failed to bind to address {address}: address already in use. Another program listens there", sentence);
    }

    private async Task<(int Code, List<string> Said)> RunAsync(string[] words, string program)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "HairClinic.Web.dll"), .. words])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
        };
        start.Environment["ConnectionStrings__Program"] = program;
        start.Environment["Keys__File"] = server.KeyFile;
        // The settings file that comes with the program says so too.
        start.Environment["Logging__LogLevel__Default"] = "Warning";
        start.Environment["DOTNET_ENVIRONMENT"] = "Production";
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, [.. $"{output}\n{await errors}".Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0)]);
    }
}
