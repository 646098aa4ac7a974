namespace HairClinic.EmbeddedPostgres;

/// <summary>Files and folders that nobody but the program's own user may open, whatever the process would otherwise allow.</summary>
public static class PrivateFiles
{
    private const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode OwnerFolder = OwnerFile | UnixFileMode.UserExecute;

    /// <summary>Makes the folder, and those above it, where they are missing. One that is there stays as its owner left it.</summary>
    public static void MakeFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, OwnerFolder);
    }

    /// <summary>Closes a folder of the program's own that an earlier version left open to others.</summary>
    public static void RestrictFolder(string folder)
    {
        if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(folder) & ~OwnerFolder) != 0)
            File.SetUnixFileMode(folder, OwnerFolder);
    }

    /// <summary>A new file, open for writing. It must not be there yet.</summary>
    public static FileStream Create(string path)
    {
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
            Options = FileOptions.Asynchronous,
        };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OwnerFile;
        return new FileStream(path, options);
    }
}
