using System.Globalization;
using System.Runtime.Versioning;

namespace HairClinic.EmbeddedPostgres;

/// <summary>
/// What lies where in a data folder. PostgreSQL's own files are in <see cref="Cluster"/>, which alone belongs to the server's user.
/// </summary>
internal sealed record DatabaseFolder
{
    private const UnixFileMode Owner = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode PassThrough = UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    private DatabaseFolder(string root) => Root = root;

    public string Root { get; }
    public string Cluster => Path.Combine(Root, "database");
    public string NewCluster => Path.Combine(Root, "database.new");
    public string LockFile => Path.Combine(Root, "database.lock");
    public string PasswordFile => Path.Combine(Root, "database.passwords");
    public string LogFile => Path.Combine(Root, "database.log");
    public string SocketFolder => Path.Combine(Root, "socket");
    public bool HasCluster => File.Exists(VersionFile);

    private string VersionFile => Path.Combine(Cluster, "PG_VERSION");

    [SupportedOSPlatform("linux")]
    public static DatabaseFolder Open(string path)
    {
        var root = Path.GetFullPath(path);
        try
        {
            if (!Directory.Exists(root))
                // Started by root, the server runs as another user, who must pass through but need not look around.
                Directory.CreateDirectory(root, Environment.IsPrivilegedProcess ? Owner | PassThrough : Owner);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            throw new EmbeddedServerException($"The data folder {root} cannot be made: {e.Message} Choose another with --data FOLDER.");
        }
        return new(WithoutLinks(root));
    }

    [SupportedOSPlatform("linux")]
    public static void CreatePrivate(string folder) => Directory.CreateDirectory(folder, Owner);

    /// <summary>The PostgreSQL version that made the database; null when there is none yet.</summary>
    public int? MajorVersion() =>
        !HasCluster ? null
        : int.TryParse(File.ReadAllText(VersionFile).Trim(), CultureInfo.InvariantCulture, out var major) ? major
        : throw new EmbeddedServerException($"{VersionFile} does not hold a PostgreSQL version: the database folder is damaged.");

    /// <summary>The path as the kernel shows it, to compare with the folder a running server works in.</summary>
    private static string WithoutLinks(string path)
    {
        var real = "/";
        foreach (var part in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            var next = Path.Combine(real, part);
            real = Directory.ResolveLinkTarget(next, returnFinalTarget: true) is { } target ? WithoutLinks(target.FullName) : next;
        }
        return real;
    }
}
