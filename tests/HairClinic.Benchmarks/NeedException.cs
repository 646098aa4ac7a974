namespace HairClinic.Benchmarks;

/// <summary>Something a benchmark works with is not on this machine; the message says in a sentence how to get it.</summary>
internal sealed class NeedException(string message) : Exception(message)
{
    /// <exception cref="NeedException">It is not on the path.</exception>
    public static void Unless(string program, string package)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        if (!folders.Any(f => File.Exists(Path.Combine(f, program))))
            throw new NeedException(
                $"This benchmark loads the site with {program}: install the package {package} (apt-get install {package})."
            );
    }
}
