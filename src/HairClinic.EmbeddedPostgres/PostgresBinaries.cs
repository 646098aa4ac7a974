using System.Globalization;
using System.Text.RegularExpressions;

namespace HairClinic.EmbeddedPostgres;

/// <summary>The server programs of one PostgreSQL version, in one folder.</summary>
public sealed partial record PostgresBinaries(string Folder, int Major)
{
    public const int OldestMajor = 15;

    public string Postgres => Path.Combine(Folder, "postgres");
    public string Initdb => Path.Combine(Folder, "initdb");

    /// <summary>What a folder holds, or null: a client-only installation has neither program.</summary>
    public static PostgresBinaries? InFolder(string folder)
    {
        var candidate = new PostgresBinaries(folder, 0);
        if (!File.Exists(candidate.Postgres) || !File.Exists(candidate.Initdb))
            return null;
        var (code, output) = ProcessRunner.Run(candidate.Postgres, "--version");
        var version = Version().Match(output);
        return code == 0 && version.Success
            ? candidate with
            {
                Major = int.Parse(version.Groups[1].ValueSpan, CultureInfo.InvariantCulture),
            }
            : null;
    }

    [GeneratedRegex(@"\(PostgreSQL\) (\d+)")]
    private static partial Regex Version();
}
