using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace HairClinic.Web.Privacy.Paper;

/// <summary>Lays headings, facts and lines down an A4 page and on to the next, and numbers the pages at the end.</summary>
public sealed class PdfDocumentWriter : IDisposable
{
    private const double Margin = 56;
    private const double Line = 14;

    private readonly PdfDocument _document = new();
    private readonly XFont _plain;
    private readonly XFont _bold;
    private readonly XFont _large;
    private XGraphics? _page;
    private double _y;

    public PdfDocumentWriter(string title)
    {
        PdfFontResolver.Register();
        _plain = new XFont(PdfFontResolver.Family, 10);
        _bold = new XFont(PdfFontResolver.Family, 10, XFontStyleEx.Bold);
        _large = new XFont(PdfFontResolver.Family, 16, XFontStyleEx.Bold);
        _document.Info.Title = title;
        Put(title, _large, indent: 0, leading: 24);
    }

    public void Heading(string text)
    {
        // A heading never stands alone at the foot of a page.
        if (_y > Bottom - 4 * Line)
            Turn();
        _y += Line;
        Put(text, new XFont(PdfFontResolver.Family, 12, XFontStyleEx.Bold), indent: 0, leading: 18);
    }

    public void Text(string text) => Put(text, _plain, indent: 0, Line);

    public void Fact(string what, string? value)
    {
        if (string.IsNullOrWhiteSpace(value))
            return;
        Put(what, _bold, indent: 0, Line);
        _y -= Line;
        Put(value, _plain, indent: 150, Line);
    }

    public byte[] Finish()
    {
        _page?.Dispose();
        for (var i = 0; i < _document.PageCount; i++)
        {
            using var page = XGraphics.FromPdfPage(_document.Pages[i], XGraphicsPdfPageOptions.Append);
            page.DrawString($"Page {i + 1} of {_document.PageCount}", _plain, XBrushes.Black, new XPoint(Margin, Bottom + 2 * Line));
        }
        using var file = new MemoryStream();
        _document.Save(file, closeStream: false);
        return file.ToArray();
    }

    public void Dispose()
    {
        _page?.Dispose();
        _document.Dispose();
    }

    private double Width => _document.Pages[^1].Width.Point - 2 * Margin;

    private double Bottom => _document.Pages[^1].Height.Point - Margin - 2 * Line;

    private void Turn()
    {
        _page?.Dispose();
        var page = _document.AddPage();
        page.Size = PageSize.A4;
        _page = XGraphics.FromPdfPage(page);
        _y = Margin + Line;
    }

    private void Put(string text, XFont font, double indent, double leading)
    {
        if (_document.PageCount == 0)
            Turn();
        foreach (var line in text.Split('\n').SelectMany(part => Broken(part.TrimEnd('\r'), font, Width - indent)))
        {
            if (_y > Bottom)
                Turn();
            _page!.DrawString(line, font, XBrushes.Black, new XPoint(Margin + indent, _y));
            _y += leading;
        }
    }

    private List<string> Broken(string text, XFont font, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ').SelectMany(w => w.Chunk(60).Select(c => new string(c))))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && _page!.MeasureString(longer, font).Width > width)
            {
                lines.Add(line);
                longer = word;
            }
            line = longer;
        }
        lines.Add(line);
        return lines;
    }
}
