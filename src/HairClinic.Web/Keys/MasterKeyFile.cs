using NodaTime.Serialization.SystemTextJson;

namespace HairClinic.Web.Keys;

/// <summary>The file the master keys lie in: one JSON document only its owner can read, the newest key last.</summary>
public static class MasterKeyFile
{
    private const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode OwnerFolder = OwnerFile | UnixFileMode.UserExecute;

    private static readonly JsonSerializerOptions Format = new JsonSerializerOptions().ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    /// <returns>Null when there is no such file.</returns>
    /// <exception cref="InvalidOperationException">It cannot be read as a key file.</exception>
    public static IReadOnlyList<MasterKey>? Read(string path)
    {
        try
        {
            var keys = JsonSerializer.Deserialize<Body>(File.ReadAllBytes(path), Format)?.Keys;
            if (keys is not { Count: > 0 } || keys.Any(k => k.Bytes.Length != MasterKey.Size || k.Id.Length == 0))
                throw new InvalidOperationException($"The key file {path} holds no usable key. Put it back from its own backup.");
            return keys;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
        catch (UnauthorizedAccessException)
        {
            throw new InvalidOperationException(
                $"The key file {path} cannot be read by this user: its owner must be who runs the program."
            );
        }
        // The parser's message may quote what it stumbled over.
        catch (JsonException)
        {
            throw new InvalidOperationException($"The key file {path} is damaged. Put it back from its own backup.");
        }
    }

    /// <summary>Writes beside and renames, so that a power cut leaves the old file or the new one, never half.</summary>
    public static void Write(string path, IReadOnlyList<MasterKey> keys)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (!Directory.Exists(folder))
            MakePrivate(folder);
        var beside = $"{path}.{Guid.CreateVersion7():N}.new";
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OwnerFile;
        using (var stream = new FileStream(beside, options))
        {
            JsonSerializer.Serialize(stream, new Body([.. keys]), Format);
            stream.Flush(flushToDisk: true);
        }
        File.Move(beside, path, overwrite: true);
    }

    private static void MakePrivate(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, OwnerFolder);
    }

    private sealed record Body(List<MasterKey> Keys);
}

/// <summary>A 256-bit key that lies outside the database. It wraps other keys; it never seals content itself.</summary>
/// <param name="Id">Stands beside everything it wrapped.</param>
public sealed record MasterKey(string Id, Instant Made, byte[] Bytes)
{
    /// <summary>Bytes in a key: AES-256 and HMAC-SHA256.</summary>
    public const int Size = 32;

    public static MasterKey Make(Instant now) =>
        new(RandomNumberGenerator.GetHexString(16, lowercase: true), now, RandomNumberGenerator.GetBytes(Size));

    /// <summary>A key for one purpose (HKDF-SHA256, RFC 5869), so that no key ever does two things.</summary>
    public byte[] DeriveKey(string purpose) =>
        HKDF.DeriveKey(HashAlgorithmName.SHA256, Bytes, Size, salt: [], Encoding.UTF8.GetBytes("hairclinic " + purpose));

    /// <summary>What the database keeps of it, to know it again without knowing it.</summary>
    public byte[] Fingerprint()
    {
        var key = DeriveKey("mark");
        var mark = HMACSHA256.HashData(key, Encoding.UTF8.GetBytes(Id));
        CryptographicOperations.ZeroMemory(key);
        return mark;
    }

    /// <summary>Never the key.</summary>
    public override string ToString() => $"master key {Id}";
}
