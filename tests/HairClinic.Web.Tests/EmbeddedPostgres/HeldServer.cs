using System.Diagnostics;
using System.Globalization;
using HairClinic.EmbeddedPostgres;
using Microsoft.Extensions.Logging.Abstractions;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

/// <summary>A second process that runs the embedded server, so that a test can kill it.</summary>
internal sealed class HeldServer : IDisposable
{
    public const string Verb = "hold-database";

    private readonly Process _program;

    private HeldServer(Process program, string connection, int server) => (_program, Connection, Server) = (program, connection, server);

    /// <summary>The migrator's way in.</summary>
    public string Connection { get; }

    /// <summary>The process number of PostgreSQL's main process.</summary>
    public int Server { get; }

    /// <summary>What the second process does: start the server, say how to reach it, wait to be killed.</summary>
    public static async Task<int> HoldAsync(string folder)
    {
        await using var server = await EmbeddedServer.StartAsync(new(folder) { Durable = false }, NullLogger.Instance);
        Console.WriteLine(server.AsMigrator);
        await Task.Delay(Timeout.InfiniteTimeSpan);
        return 0;
    }

    public static async Task<HeldServer> StartAsync(TestFolder folder, CancellationToken cancellationToken)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(HeldServer).Assembly.Location, Verb, folder.Path])
        {
            RedirectStandardOutput = true,
        };
        var program = Process.Start(start)!;
        var connection = await program.StandardOutput.ReadLineAsync(cancellationToken);
        return new(program, connection ?? throw new InvalidOperationException("The second process ended early."), MainProcess(folder));
    }

    public static int MainProcess(TestFolder folder) =>
        int.Parse(File.ReadLines(Path.Combine(folder.Cluster, "postmaster.pid")).First(), CultureInfo.InvariantCulture);

    /// <summary>kill -9 of the program alone.</summary>
    public void KillProgram()
    {
        _program.Kill();
        _program.WaitForExit();
    }

    /// <summary>kill -9 of the shell that guards the server. The fourth word of its status line is a process's parent.</summary>
    public void KillGuard()
    {
        var status = File.ReadAllText($"/proc/{Server}/stat");
        Kill(int.Parse(status[(status.LastIndexOf(')') + 1)..].Split(' ')[2], CultureInfo.InvariantCulture));
    }

    public void KillServer() => Kill(Server);

    public static void Kill(int number)
    {
        using var process = Process.GetProcessById(number);
        process.Kill();
    }

    public void Dispose()
    {
        if (!_program.HasExited)
            KillProgram();
        _program.Dispose();
    }
}
