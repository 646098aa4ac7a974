using System.Net;
using OxyPlot;

namespace HairClinic.Web.Ui.Plots;

/// <summary>Writes what the plotting library draws as SVG of attributes and class names alone: the content policy refuses styles.</summary>
/// <remarks>
/// The library's own writer puts colours and widths into style attributes. No font is looked at: lettering is the page's, and
/// its width is guessed, so that a machine without fonts lays plots out the same.
/// </remarks>
internal sealed class SvgRenderContext : RenderContextBase
{
    // Of a letter, in its height: a fair mean for sans-serif figures and lower case.
    private const double LetterWidth = 0.54;
    private readonly StringBuilder _svg = new();
    private int _clips;

    public string Written => _svg.ToString();

    public override int ClipCount => _clips;

    public static double WidthOf(string text, double size) => text.Length * size * LetterWidth;

    public override void DrawLine(
        IList<ScreenPoint> points,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode,
        double[] dashArray,
        LineJoin lineJoin
    )
    {
        if (points.Count < 2 || thickness <= 0 || stroke.IsInvisible())
            return;
        _svg.Append("<polyline fill=\"none\"");
        AddPoints(points);
        AddStroke(stroke, thickness, dashArray);
        _svg.Append("/>");
    }

    public override void DrawPolygon(
        IList<ScreenPoint> points,
        OxyColor fill,
        OxyColor stroke,
        double thickness,
        EdgeRenderingMode edgeRenderingMode,
        double[] dashArray,
        LineJoin lineJoin
    )
    {
        if (points.Count < 3 || fill.IsInvisible() && (stroke.IsInvisible() || thickness <= 0))
            return;
        _svg.Append("<polygon");
        AddPoints(points);
        // Edges as a shape of their own: one element has one class for its colour.
        _svg.Append(
            fill.IsInvisible() ? " fill=\"none\"" : string.Create(CultureInfo.InvariantCulture, $" fill-opacity=\"{fill.A / 255.0:0.##}\"")
        );
        if (!fill.IsInvisible())
            _svg.Append(" class=\"fill-").Append(PlotPen.TokenOf(fill)).Append('"');
        _svg.Append("/>");
        if (thickness > 0 && !stroke.IsInvisible())
            DrawLine([.. points, points[0]], stroke, thickness, edgeRenderingMode, dashArray, lineJoin);
    }

    public override void DrawText(
        ScreenPoint p,
        string text,
        OxyColor fill,
        string fontFamily,
        double fontSize,
        double fontWeight,
        double rotation,
        HorizontalAlignment horizontalAlignment,
        VerticalAlignment verticalAlignment,
        OxySize? maxSize
    )
    {
        if (string.IsNullOrEmpty(text))
            return;
        var anchor = horizontalAlignment switch
        {
            HorizontalAlignment.Left => "start",
            HorizontalAlignment.Right => "end",
            _ => "middle",
        };
        var down = verticalAlignment switch
        {
            VerticalAlignment.Top => 0.8 * fontSize,
            VerticalAlignment.Bottom => -0.2 * fontSize,
            _ => 0.33 * fontSize,
        };
        _svg.Append(
            CultureInfo.InvariantCulture,
            $"<text font-size=\"{fontSize:0.#}\" text-anchor=\"{anchor}\" class=\"fill-{PlotPen.TokenOf(fill)}\" transform=\"translate({p.X:0.#} {p.Y:0.#})"
        );
        if (rotation != 0)
            _svg.Append(CultureInfo.InvariantCulture, $" rotate({rotation:0.#})");
        _svg.Append(CultureInfo.InvariantCulture, $"\" y=\"{down:0.#}\">").Append(WebUtility.HtmlEncode(text)).Append("</text>");
    }

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight) =>
        string.IsNullOrEmpty(text) ? OxySize.Empty : new OxySize(WidthOf(text, fontSize), 1.1 * fontSize);

    private void AddPoints(IList<ScreenPoint> points)
    {
        _svg.Append(" points=\"");
        for (var i = 0; i < points.Count; i++)
            _svg.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? "" : " ")}{points[i].X:0.#},{points[i].Y:0.#}");
        _svg.Append('"');
    }

    private void AddStroke(OxyColor stroke, double thickness, double[]? dashes)
    {
        _svg.Append(CultureInfo.InvariantCulture, $" class=\"stroke-{PlotPen.TokenOf(stroke)}\" stroke-width=\"{thickness:0.#}\"");
        if (dashes is { Length: > 0 })
        {
            _svg.Append(" stroke-dasharray=\"")
                .AppendJoin(' ', dashes.Select(d => (d * thickness).ToString("0.#", CultureInfo.InvariantCulture)))
                .Append('"');
        }
    }

    // Every axis spans all that is drawn: there is nothing to cut off, but the library keeps count.
    public override void PushClip(OxyRect clippingRectangle) => _clips++;

    public override void PopClip() => _clips--;
}
