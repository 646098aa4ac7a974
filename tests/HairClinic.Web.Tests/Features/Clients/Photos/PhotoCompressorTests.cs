using System.Text;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Photos;
using NetVips;

namespace HairClinic.Web.Tests.Features.Clients.Photos;

public sealed class PhotoCompressorTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_photo_is_turned_upright_made_smaller_and_keeps_nothing_the_camera_wrote()
    {
        var taken = DrawnPhoto.Jpeg(3600, 2400);
        Assert.Contains(DrawnPhoto.Camera, Encoding.Latin1.GetString(taken), StringComparison.Ordinal);

        var pressed = await PhotoCompressor.CompressAsync(taken, Cancel);

        Assert.Equal((1600, 2400), (pressed.Width, pressed.Height));
        foreach (var picture in new[] { pressed.Full, pressed.Small })
        {
            var text = Encoding.Latin1.GetString(picture);
            // RFC 9649 names the chunks of a WebP file; EXIF and XMP hold what a camera wrote.
            Assert.Equal(("RIFF", "WEBP"), (text[..4], text[8..12]));
            Assert.DoesNotContain("EXIF", text, StringComparison.Ordinal);
            Assert.DoesNotContain("XMP ", text, StringComparison.Ordinal);
            Assert.DoesNotContain(DrawnPhoto.Camera, text, StringComparison.Ordinal);
        }
        using var small = Image.NewFromBuffer(pressed.Small);
        Assert.Equal((213, 320), (small.Width, small.Height));
    }

    [Fact]
    public async Task A_small_picture_is_not_blown_up() =>
        Assert.Equal(
            (400, 640),
            ((await PhotoCompressor.CompressAsync(DrawnPhoto.Jpeg(), Cancel)) is var p ? (p.Width, p.Height) : default)
        );

    [Fact]
    public async Task A_picture_that_would_unpack_to_too_much_is_refused_before_it_does()
    {
        var bomb = DrawnPhoto.Bomb();
        Assert.True(bomb.Length < 1_000_000);

        await Refused.SayingAsync(
            "This picture has more than {0} million points. Take it smaller.",
            () => PhotoCompressor.CompressAsync(bomb, Cancel)
        );
    }

    [Fact]
    public async Task What_is_no_photo_is_refused_whatever_it_says_it_is()
    {
        var cut = DrawnPhoto.Jpeg(3000, 2000);
        byte[][] files =
        [
            [],
            "<svg xmlns='http://www.w3.org/2000/svg' width='10' height='10'/>"u8.ToArray(),
            "%PDF-1.7 and so on"u8.ToArray(),
            [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3],
            [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 9, 9],
            [.. "RIFF"u8, 0, 0, 0, 0, .. "WEBP"u8, 1],
            cut[..(cut.Length / 2)],
        ];
        foreach (var file in files)
            await Refused.SayingAsync(
                "This is not a photo that can be read. Take a JPEG, PNG or WebP picture.",
                () => PhotoCompressor.CompressAsync(file, Cancel)
            );
        await Refused.SayingAsync(
            "A photo has at most {0} megabytes.",
            () => PhotoCompressor.CompressAsync(new byte[PhotoCompressor.MostBytes + 1], Cancel)
        );
    }
}
