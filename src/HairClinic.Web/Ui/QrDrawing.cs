using QRCoder;

namespace HairClinic.Web.Ui;

/// <summary>A QR code as one SVG path: a unit a module, with its quiet margin.</summary>
public sealed record QrDrawing(int Size, string Path)
{
    public static QrDrawing Encode(string text)
    {
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var path = new StringBuilder();
        for (var y = 0; y < data.ModuleMatrix.Count; y++)
        {
            for (var x = 0; x < data.ModuleMatrix.Count; x++)
            {
                if (data.ModuleMatrix[y][x])
                    path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
            }
        }
        return new QrDrawing(data.ModuleMatrix.Count, path.ToString());
    }
}
