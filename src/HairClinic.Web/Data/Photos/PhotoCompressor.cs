using NetVips;

namespace HairClinic.Web.Data.Photos;

/// <summary>
/// Takes a picture as a camera made it and gives it back upright, smaller, as WebP and without anything else the camera wrote:
/// place, device, owner. What cannot be decoded is refused, whatever its name says.
/// </summary>
public static class PhotoCompressor
{
    public const int MostBytes = 15 * 1024 * 1024;
    public const long MostPixels = 60_000_000;
    public const int LongSide = 2400;
    public const int SmallSide = 320;

    // Decoding takes a core and some hundred megabytes: one at a time leaves the book answering.
    private static readonly SemaphoreSlim Turn = new(1);

    public static Task<Pressed> CompressAsync(byte[] file, CancellationToken cancellation) =>
        CompressAsync(new MemoryStream(file, writable: false), cancellation);

    /// <param name="file">In memory, read several times from its beginning; it stays the caller's.</param>
    /// <exception cref="Refusal">It is no photo, too large, or damaged.</exception>
    public static async Task<Pressed> CompressAsync(Stream file, CancellationToken cancellation)
    {
        if (file.Length > MostBytes)
            throw new Refusal("A photo has at most {0} megabytes.", MostBytes / 1024 / 1024);
        await Turn.WaitAsync(cancellation);
        try
        {
            return await Task.Run(() => Press(file), cancellation);
        }
        finally
        {
            Turn.Release();
        }
    }

    private static Pressed Press(Stream file)
    {
        // Nothing of a client is to stay in the library's own memory.
        Cache.Max = 0;
        try
        {
            // Reads the head only: size is judged before anything is unpacked.
            using (var head = Head(file))
            {
                if ((long)head.Width * head.Height > MostPixels)
                    throw new Refusal("This picture has more than {0} million points. Take it smaller.", MostPixels / 1_000_000);
                // Reads every point once: a picture that was cut off shows only at its end.
                _ = head.Avg();
            }
            // One after the other: both read the same file.
            var full = Shrink(file, LongSide, quality: 82);
            return new Pressed(full.File, Shrink(file, SmallSide, quality: 75).File, full.Width, full.Height);
        }
        catch (VipsException)
        {
            throw new Refusal("This is not a photo that can be read. Take a JPEG, PNG or WebP picture.");
        }
    }

    // The first bytes choose the reader, so that no other reader of the library is ever reached. From top to bottom, line by line: a
    // picture that may be read in any order is unpacked first, and a large one onto the disk, in clear.
    private static Image Head(Stream file)
    {
        file.Position = 0;
        var first = new byte[12];
        var read = file.ReadAtLeast(first, first.Length, throwOnEndOfStream: false);
        file.Position = 0;
        return first.AsSpan(0, read) switch
        {
            [0xFF, 0xD8, 0xFF, ..] => Image.JpegloadStream(file, access: Enums.Access.Sequential, failOn: Enums.FailOn.Truncated),
            [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, ..] => Image.PngloadStream(
                file,
                access: Enums.Access.Sequential,
                failOn: Enums.FailOn.Truncated
            ),
            [0x52, 0x49, 0x46, 0x46, _, _, _, _, 0x57, 0x45, 0x42, 0x50] => Image.WebploadStream(
                file,
                access: Enums.Access.Sequential,
                failOn: Enums.FailOn.Truncated
            ),
            _ => throw new Refusal("This is not a photo that can be read. Take a JPEG, PNG or WebP picture."),
        };
    }

    // Turns it upright as the camera noted, into the colours every screen knows, and keeps nothing else of what the camera wrote.
    private static (byte[] File, int Width, int Height) Shrink(Stream file, int side, int quality)
    {
        file.Position = 0;
        using var image = Image.ThumbnailStream(
            file,
            side,
            height: side,
            size: Enums.Size.Down,
            outputProfile: "srgb",
            failOn: Enums.FailOn.Truncated
        );
        return (image.WebpsaveBuffer(q: quality, keep: Enums.ForeignKeep.None), image.Width, image.Height);
    }

    public sealed record Pressed(byte[] Full, byte[] Small, int Width, int Height);
}
