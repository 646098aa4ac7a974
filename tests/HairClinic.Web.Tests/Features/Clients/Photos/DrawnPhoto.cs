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

    /// <summary>Noise, which a JPEG cannot make small, held upright: as many bytes a point as a telephone's picture of a meadow. The same each time.</summary>
    public static byte[] Noise(int width, int height, double strength, int quality)
    {
        using var noise = Image.Gaussnoise(width, height, sigma: strength, mean: 128, seed: 7);
        using var grey = noise.Cast(Enums.BandFormat.Uchar);
        using var colour = grey.Bandjoin(grey, grey).Copy(interpretation: Enums.Interpretation.Srgb);
        using var noted = colour.Mutate(m =>
        {
            m.Set(GValue.GIntType, "orientation", 6);
            m.Set(GValue.GStrType, "exif-ifd0-Make", Camera);
        });
        return noted.JpegsaveBuffer(q: quality);
    }

    /// <summary>15 MB from a sensor of 48 megapixels.</summary>
    public static byte[] FromLargeSensor() => Noise(8064, 6048, strength: 20, quality: 74);

    /// <summary>A small file that unpacks to a hundred million points.</summary>
    public static byte[] Bomb()
    {
        using var wide = Image.Black(10_000, 10_000);
        return wide.PngsaveBuffer(compression: 9);
    }
}
