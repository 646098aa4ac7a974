using HairClinic.EmbeddedPostgres;

namespace HairClinic.Web.Data.Photos;

/// <summary>
/// Sealed files of clients, in a folder a practice below <c>Files:Folder</c> (else <c>files</c> in the data folder), under names
/// that say nothing. They are never served as they lie. Back them up with the database.
/// </summary>
public sealed class SealedFiles(IConfiguration configuration)
{
    private string Root =>
        Path.GetFullPath(
            configuration["Files:Folder"] is { Length: > 0 } named
                ? named
                : Path.Combine(configuration["data"] ?? DefaultFolders.Data, "files")
        );

    /// <param name="part">Null for the file itself, else a short word of ours such as "small".</param>
    public async Task WriteCiphertextAsync(Guid practiceId, Guid fileId, string? part, byte[] closed, CancellationToken cancellation)
    {
        var path = PathOf(practiceId, fileId, part);
        PrivateFiles.MakeFolder(Root);
        PrivateFiles.MakeFolder(Path.GetDirectoryName(path)!);
        await using var stream = PrivateFiles.Create(path);
        await stream.WriteAsync(closed, cancellation);
        stream.Flush(flushToDisk: true);
    }

    /// <returns>Null when it is not there.</returns>
    public async Task<byte[]?> ReadCiphertextAsync(Guid practiceId, Guid fileId, string? part, CancellationToken cancellation)
    {
        try
        {
            return await File.ReadAllBytesAsync(PathOf(practiceId, fileId, part), cancellation);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return null;
        }
    }

    public void Delete(Guid practiceId, Guid fileId, params ReadOnlySpan<string?> parts)
    {
        foreach (var part in parts)
        {
            var path = PathOf(practiceId, fileId, part);
            if (File.Exists(path))
                File.Delete(path);
        }
    }

    /// <summary>All files of a practice that is thrown away.</summary>
    public void DeleteOfPractice(Guid practiceId)
    {
        var folder = Path.Combine(Root, practiceId.ToString("N"));
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    private string PathOf(Guid practiceId, Guid fileId, string? part) =>
        Path.Combine(Root, practiceId.ToString("N"), fileId.ToString("N") + (part is null ? "" : "." + part));
}
