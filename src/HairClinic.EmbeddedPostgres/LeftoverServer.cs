using System.Diagnostics;
using System.Globalization;

namespace HairClinic.EmbeddedPostgres;

/// <summary>
/// A server that an earlier run left behind: still stopping after the program was killed, or orphaned because its guard was
/// killed as well. It is stopped, never adopted, so that each run has a server it can watch. Call only with the folder's lock.
/// </summary>
internal static class LeftoverServer
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    public static async Task StopAsync(DatabaseFolder folder, ILogger logger, CancellationToken cancellationToken)
    {
        var pidFile = Path.Combine(folder.Cluster, "postmaster.pid");
        var waited = Stopwatch.StartNew();
        while (ProcessesOf(folder.Cluster) is { Count: > 0 } alive)
        {
            if (waited.Elapsed > Patience)
                throw new EmbeddedServerException(
                    $"A PostgreSQL server left by an earlier run still works in {folder.Cluster} (process {string.Join(", ", alive)}) and does not stop. Stop it and start again."
                );
            if (MainProcess(pidFile) is { } main && alive.Contains(main))
            {
                logger.LogInformation("A PostgreSQL server of an earlier run (process {Process}) is still there: stopping it", main);
                ProcessRunner.Run("/bin/sh", "-c", "kill -INT \"$1\"", "sh", main.ToString(CultureInfo.InvariantCulture));
            }
            await Task.Delay(TimeSpan.FromMilliseconds(200), cancellationToken);
        }
        // Its number may belong to another process by now, which PostgreSQL would take for a running server.
        File.Delete(pidFile);
    }

    private static int? MainProcess(string pidFile)
    {
        try
        {
            return int.TryParse(File.ReadLines(pidFile).FirstOrDefault(), CultureInfo.InvariantCulture, out var pid) ? pid : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>Every process of a PostgreSQL server works in its database folder.</summary>
    private static List<int> ProcessesOf(string cluster)
    {
        var found = new List<int>();
        foreach (var entry in Directory.GetDirectories("/proc"))
            if (int.TryParse(Path.GetFileName(entry), CultureInfo.InvariantCulture, out var pid) && WorksIn(entry, cluster))
                found.Add(pid);
        return found;
    }

    private static bool WorksIn(string process, string cluster)
    {
        try
        {
            return File.ReadAllText(Path.Combine(process, "comm")).Trim() == "postgres"
                && Directory.ResolveLinkTarget(Path.Combine(process, "cwd"), returnFinalTarget: false)?.FullName == cluster;
        }
        // Gone meanwhile, or another person's.
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
