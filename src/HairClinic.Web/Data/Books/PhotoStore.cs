using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Sealing;

namespace HairClinic.Web.Data.Books;

/// <summary>Photos of a client: what there is, and the pictures themselves, opened with the client's key.</summary>
public sealed class PhotoStore(Sealer sealer, SealedFiles files)
{
    public const string Small = "small";

    private const string Purpose = "photo";

    /// <summary>What a client sees of their own: those shared with them, newest first.</summary>
    public static IQueryable<Photo> SharedWith(ClinicDb db, Guid clientId) =>
        db
            .Photos.AsNoTracking()
            .Where(p => p.ClientId == clientId && p.Shared && p.RemovedAt == null)
            .OrderByDescending(p => p.TakenOn)
            .ThenByDescending(p => p.Id);

    /// <summary>Seals both sizes into files; the row that names them is the caller's to save, or the files to delete.</summary>
    public async Task<PhotoFile> StoreFilesAsync(
        ClinicDb db,
        Guid clientId,
        PhotoCompressor.Pressed pressed,
        CancellationToken cancellation
    )
    {
        // Not a version 7: a file's name must not tell when it was made.
        var id = Guid.NewGuid();
        var full = await sealer.SealAsync(db, clientId, PurposeOf(part: null), id, pressed.Full, cancellation);
        var small = await sealer.SealAsync(db, clientId, PurposeOf(Small), id, pressed.Small, cancellation);
        try
        {
            await files.WriteCiphertextAsync(db.PracticeId, id, part: null, full, cancellation);
            await files.WriteCiphertextAsync(db.PracticeId, id, Small, small, cancellation);
        }
        catch
        {
            DeleteFiles(db.PracticeId, id);
            throw;
        }
        return new PhotoFile(id, pressed.Width, pressed.Height, full.Length);
    }

    /// <param name="part">Null for the whole picture, or <see cref="Small"/>.</param>
    /// <returns>WebP; null when the file is not there or the client's key was destroyed.</returns>
    public async Task<byte[]?> OpenAsync(ClinicDb db, Photo photo, string? part, CancellationToken cancellation)
    {
        if (await files.ReadCiphertextAsync(db.PracticeId, photo.FileId, part, cancellation) is not { } closed)
            return null;
        return (await sealer.OpenAsync(db, photo.ClientId, PurposeOf(part), photo.FileId, closed, cancellation)).Bytes;
    }

    public void DeleteFiles(Guid practiceId, Guid fileId) => files.Delete(practiceId, fileId, null, Small);

    private static string PurposeOf(string? part) => part is null ? Purpose : $"{Purpose} {part}";
}
