using System.Runtime.Versioning;
using System.Text;

namespace HairClinic.EmbeddedPostgres;

/// <summary>
/// The folder of the server's socket. Nothing listens on the network, and only the server's user and root can enter.
/// </summary>
internal sealed class SocketFolder : IDisposable
{
    // The kernel's limit for a socket's path is 108 bytes with the closing zero.
    private const int LongestPath = 107;
    public const int Port = 5432;

    private SocketFolder(string path) => Path = path;

    public string Path { get; }

    /// <summary>What a killed server left in the folder is cleared; one that is still stopping does not miss it.</summary>
    [SupportedOSPlatform("linux")]
    public static SocketFolder Make(DatabaseFolder folder, ServerUser user)
    {
        var path = folder.SocketFolder;
        if (Fits(path))
        {
            if (Directory.Exists(path))
                Directory.Delete(path, recursive: true);
            DatabaseFolder.CreatePrivate(path);
        }
        else
        {
            // A deep data folder. The system makes a new folder that nobody else can have prepared.
            path = Directory.CreateTempSubdirectory("hairclinic-").FullName;
            if (!Fits(path))
                throw new EmbeddedServerException(
                    $"Neither {folder.SocketFolder} nor {path} is short enough for a socket ({LongestPath} bytes). Choose a shorter data folder: --data FOLDER."
                );
        }
        user.ChangeOwner(path);
        user.RequireAccess(path);
        return new(path);
    }

    public void Dispose()
    {
        if (Directory.Exists(Path))
            Directory.Delete(Path, recursive: true);
    }

    private static bool Fits(string folder) => Encoding.UTF8.GetByteCount($"{folder}/.s.PGSQL.{Port}") <= LongestPath;
}
