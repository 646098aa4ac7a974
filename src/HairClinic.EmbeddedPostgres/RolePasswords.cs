using System.Runtime.Versioning;
using System.Security.Cryptography;
using System.Text.Json;

namespace HairClinic.EmbeddedPostgres;

/// <summary>The generated passwords of the server's roles, in a file only the program's user can read.</summary>
internal sealed record RolePasswords(string Administrator, string Program, string Migrator, string Keeper)
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    [SupportedOSPlatform("linux")]
    public static RolePasswords ReadOrCreate(DatabaseFolder folder)
    {
        if (File.Exists(folder.PasswordFile))
            return JsonSerializer.Deserialize<RolePasswords>(File.ReadAllText(folder.PasswordFile))
                ?? throw new EmbeddedServerException(
                    $"{folder.PasswordFile} is empty. Put the file back from a backup of the data folder."
                );
        if (folder.HasCluster)
            throw new EmbeddedServerException(
                $"{folder.PasswordFile} is missing, and the database beside it cannot be opened without it. Put the file back from a backup of the data folder."
            );
        var made = new RolePasswords(Make(), Make(), Make(), Make());
        WritePrivate(folder.PasswordFile, JsonSerializer.Serialize(made));
        return made;
    }

    /// <summary>Writes beside and renames, so that a power cut leaves the old file or the new one, never half.</summary>
    [SupportedOSPlatform("linux")]
    public static void WritePrivate(string path, string text)
    {
        var beside = path + ".new";
        File.Delete(beside);
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
            UnixCreateMode = OwnerOnly,
        };
        using (var stream = new FileStream(beside, options))
        {
            stream.Write(System.Text.Encoding.UTF8.GetBytes(text));
            stream.Flush(flushToDisk: true);
        }
        File.Move(beside, path, overwrite: true);
    }

    // 192 bits, and only characters that need no quoting in SQL or in a connection string.
    private static string Make() => RandomNumberGenerator.GetHexString(48, lowercase: true);
}
