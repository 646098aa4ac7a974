using System.Runtime.Versioning;

namespace HairClinic.EmbeddedPostgres;

/// <summary>One program per data folder. The operating system holds the lock, so it ends with the process, however it ends.</summary>
internal sealed class FolderLock : IDisposable
{
    // EWOULDBLOCK, how Linux says that another holds the lock.
    private const int HeldByAnother = 11;

    private readonly FileStream _file;

    private FolderLock(FileStream file) => _file = file;

    [SupportedOSPlatform("linux")]
    public static FolderLock Acquire(DatabaseFolder folder)
    {
        try
        {
            var options = new FileStreamOptions
            {
                Mode = FileMode.OpenOrCreate,
                Access = FileAccess.ReadWrite,
                Share = FileShare.None,
                // Whoever could read it could hold the lock as well.
                UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
            };
            return new(new FileStream(folder.LockFile, options));
        }
        catch (IOException e) when (e.HResult == HeldByAnother)
        {
            throw new EmbeddedServerException(
                $"Another HairClinic is already running on the data folder {folder.Root}. Stop it first, or start this one with another folder: --data FOLDER."
            );
        }
        catch (UnauthorizedAccessException)
        {
            throw new EmbeddedServerException(
                $"The data folder {folder.Root} belongs to another user. Start HairClinic as that user, or choose another folder: --data FOLDER."
            );
        }
    }

    // The file stays: removing it would let two starts lock two different files of the same name.
    public void Dispose() => _file.Dispose();
}
