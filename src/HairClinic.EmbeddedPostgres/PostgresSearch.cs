namespace HairClinic.EmbeddedPostgres;

/// <summary>
/// Where server programs are looked for: the one folder a person named, else the machine's own, newest first, else the npm package.
/// </summary>
public sealed record PostgresSearch(string? OnlyFolder, IReadOnlyList<string> MachineFolders, string Tools)
{
    /// <summary>
    /// <c>HAIRCLINIC_POSTGRES_BIN</c> names the one folder to use. <c>HAIRCLINIC_POSTGRES_FROM=npm</c> passes over the machine's
    /// own PostgreSQL, to try the package on a machine that has both.
    /// </summary>
    public static PostgresSearch FromEnvironment()
    {
        var only = Environment.GetEnvironmentVariable("HAIRCLINIC_POSTGRES_BIN");
        var passOver = Environment.GetEnvironmentVariable("HAIRCLINIC_POSTGRES_FROM") == "npm";
        return new(string.IsNullOrEmpty(only) ? null : only, passOver ? [] : OnThisMachine(), DefaultFolders.Tools);
    }

    /// <param name="major">The version an existing database needs; null for a new one.</param>
    /// <exception cref="EmbeddedServerException">Nothing fits; the message names the commands that install it.</exception>
    public PostgresBinaries Find(int? major)
    {
        if (OnlyFolder is not null)
        {
            var named = PostgresBinaries.InFolder(OnlyFolder);
            if (named is null)
                throw new EmbeddedServerException(
                    $"HAIRCLINIC_POSTGRES_BIN is {OnlyFolder}, which holds no working 'postgres' and 'initdb'."
                );
            return Fits(named, major) ? named : throw Missing(major, [named]);
        }
        var found = MachineFolders.Select(PostgresBinaries.InFolder).OfType<PostgresBinaries>().OrderByDescending(b => b.Major).ToList();
        if (found.Find(b => Fits(b, major)) is { } own)
            return own;
        found.AddRange(
            PostgresNpmPackage.FoldersIn(Tools).Select(PostgresBinaries.InFolder).OfType<PostgresBinaries>().OrderByDescending(b => b.Major)
        );
        return found.Find(b => Fits(b, major)) ?? throw Missing(major, found);
    }

    private static bool Fits(PostgresBinaries binaries, int? major) =>
        major is null ? binaries.Major >= PostgresBinaries.OldestMajor : binaries.Major == major;

    private EmbeddedServerException Missing(int? major, List<PostgresBinaries> found)
    {
        var need = major is null
            ? $"No PostgreSQL server was found ({PostgresBinaries.OldestMajor} or newer is needed)."
            : $"This data folder was made by PostgreSQL {major} and opens only with PostgreSQL {major}, which was not found.";
        var have = found.Count == 0 ? "" : " Found: " + string.Join(", ", found.Select(b => $"PostgreSQL {b.Major} in {b.Folder}")) + ".";
        return new(
            $"""
            {need}{have} Install it with one of these commands and start again:
              apt-get install {(major is null ? "postgresql" : $"postgresql-{major}")}
              {PostgresNpmPackage.InstallCommand(Tools, major)}
            """
        );
    }

    private static List<string> OnThisMachine()
    {
        // Debian keeps server programs out of PATH, one folder per version; other systems put them on PATH.
        const string debian = "/usr/lib/postgresql";
        var versioned = Directory.Exists(debian) ? Directory.GetDirectories(debian).Select(d => Path.Combine(d, "bin")) : [];
        var path = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':', StringSplitOptions.RemoveEmptyEntries);
        return [.. versioned.Concat(path).Distinct()];
    }
}
