using NetVips;

namespace HairClinic.Web.Tests.Features.Clients.Photos;

/// <summary>Pictures drawn by code, as a camera would hand them over.</summary>
internal static class DrawnPhoto
{
    public const string Camera = "Camera of nobody";

    /// <summary>Wider than high on the sensor, held upright: a reader that heeds the note shows it higher than wide.</summary>
    public static byte[] Jpeg(int width = 640, int height = 400)
    {
        using var plain = Image.Black(width, height, bands: 3) + 128;
        using var colour = plain.Cast(Enums.BandFormat.Uchar).Copy(interpretation: Enums.Interpretation.Srgb);
        using var noted = colour.Mutate(m =>
        {
            m.Set(GValue.GIntType, "orientation", 6);
            m.Set(GValue.GStrType, "exif-ifd0-Make", Camera);
        });
        return noted.JpegsaveBuffer();
    }

    /// <summary>A small file that unpacks to a hundred million points.</summary>
    public static byte[] Bomb()
    {
        using var wide = Image.Black(10_000, 10_000);
        return wide.PngsaveBuffer(compression: 9);
    }
}
