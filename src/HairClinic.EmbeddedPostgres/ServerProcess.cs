using System.Diagnostics;

namespace HairClinic.EmbeddedPostgres;

/// <summary>The running server and its guard, a shell that stops it cleanly when this program ends, even by kill -9.</summary>
internal sealed class ServerProcess : IAsyncDisposable
{
    // The guard's input is a pipe from this program. When it closes – by us, or by the kernel after a kill – the guard asks the
    // server for a fast shutdown, again until it is gone, as the signal is ignored in the first moments of a start.
    private const string Guard = """
        umask 077
        exec >>"$1" 2>&1 3<&0
        shift
        "$@" </dev/null 3<&- &
        server=$!
        ( while read -r line <&3; do :; done; while kill -INT $server; do sleep 0.2; done ) 2>/dev/null &
        reader=$!
        exec 3<&-
        wait $server; code=$?
        kill -KILL $reader
        exit $code
        """;
    private static readonly TimeSpan StopPatience = TimeSpan.FromMinutes(1);

    private readonly Process _guard;

    private ServerProcess(Process guard) => _guard = guard;

    public bool HasExited => _guard.HasExited;

    public static ServerProcess Start(string logFile, IEnumerable<string> command)
    {
        // A session of its own: Ctrl-C in the terminal must reach the program first, the database last.
        var start = ProcessRunner.CreateStartInfo(["setsid", "/bin/sh", "-c", Guard, "hairclinic-database", logFile, .. command]);
        start.RedirectStandardInput = true;
        return new(Process.Start(start)!);
    }

    public async Task<int> WaitForExitAsync(CancellationToken cancellationToken)
    {
        await _guard.WaitForExitAsync(cancellationToken);
        return _guard.ExitCode;
    }

    /// <summary>Fast shutdown; a server that takes longer than a minute is left to finish, and the next start waits for it.</summary>
    public async ValueTask DisposeAsync()
    {
        _guard.StandardInput.Close();
        using var patience = new CancellationTokenSource(StopPatience);
        try
        {
            await _guard.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException) { }
        _guard.Dispose();
    }
}
