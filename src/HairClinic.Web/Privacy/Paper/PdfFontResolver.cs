using PdfSharp.Fonts;

namespace HairClinic.Web.Privacy.Paper;

/// <summary>The letters of our papers, carried in the program: a server has no fonts of its own. Licence: OFL.txt beside the files.</summary>
public sealed class PdfFontResolver : IFontResolver
{
    public const string Family = "Atkinson Hyperlegible Next";

    private static readonly Lock Once = new();

    public static void Register()
    {
        lock (Once)
            GlobalFontSettings.FontResolver ??= new PdfFontResolver();
    }

    public FontResolverInfo ResolveTypeface(string familyName, bool bold, bool italic) =>
        new($"AtkinsonHyperlegibleNext-{(bold ? "Bold" : "Regular")}");

    public byte[] GetFont(string faceName)
    {
        using var file = typeof(PdfFontResolver).Assembly.GetManifestResourceStream(faceName + ".ttf")!;
        using var all = new MemoryStream();
        file.CopyTo(all);
        return all.ToArray();
    }
}
