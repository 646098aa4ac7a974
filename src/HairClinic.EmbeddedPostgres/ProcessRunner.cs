using System.Diagnostics;

namespace HairClinic.EmbeddedPostgres;

/// <summary>Runs a short command to its end.</summary>
internal static class ProcessRunner
{
    public static (int Code, string Output) Run(params IEnumerable<string> words)
    {
        using var process = new Process { StartInfo = CreateStartInfo(words) };
        process.StartInfo.RedirectStandardOutput = true;
        process.StartInfo.RedirectStandardError = true;
        try
        {
            process.Start();
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            return (127, e.Message);
        }
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, (output + errors.GetAwaiter().GetResult()).Trim());
    }

    public static void RunOrThrow(params IEnumerable<string> words)
    {
        var (code, output) = Run(words);
        if (code != 0)
            throw new EmbeddedServerException($"'{string.Join(' ', words)}' failed: {output}");
    }

    /// <summary>
    /// Started from / and without PG* and locale settings of the person's shell: they would change what PostgreSQL does
    /// and in which language it says so.
    /// </summary>
    public static ProcessStartInfo CreateStartInfo(IEnumerable<string> words)
    {
        var list = words.ToList();
        var start = new ProcessStartInfo(list[0], list.Skip(1)) { WorkingDirectory = "/" };
        var unwanted = start.Environment.Keys.Where(k =>
            k.StartsWith("PG", StringComparison.Ordinal) || k.StartsWith("LC_", StringComparison.Ordinal)
        );
        foreach (var name in unwanted.ToList())
            start.Environment.Remove(name);
        start.Environment["LC_ALL"] = "C";
        return start;
    }
}
