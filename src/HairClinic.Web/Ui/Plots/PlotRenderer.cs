using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace HairClinic.Web.Ui.Plots;

/// <summary>Lays a plot out with the plotting library and writes it as SVG, at one size.</summary>
public static class PlotRenderer
{
    private const double Letters = 13;

    public static string Draw(PlotData picture, double width, double height)
    {
        var model = new PlotModel
        {
            Culture = CultureInfo.CurrentCulture,
            TextColor = PlotPen.Quiet,
            PlotAreaBorderThickness = new OxyThickness(1, 0, 0, 1),
            PlotAreaBorderColor = PlotPen.Ink,
            DefaultFontSize = Letters,
            Padding = new OxyThickness(2, 6, 14, 2),
        };
        var (left, right) = Ends(picture);
        var across = Axis(AxisPosition.Bottom, picture.XTitle, left, right);
        across.IntervalLength = Math.Max(60, width / 8);
        across.LabelFormatter = At(picture);
        if (picture.Bars.Count > 0)
            across.MajorStep = Math.Max(1, Math.Ceiling(picture.Bars.Count * Widest(picture) / (width - 80)));
        var up = Axis(AxisPosition.Left, picture.YTitle, 0, picture.Highest ?? 1.06 * Top(picture));
        up.StringFormat = picture.Format;
        up.MajorGridlineStyle = LineStyle.Solid;
        up.MajorGridlineColor = PlotPen.Rule;
        model.Axes.Add(across);
        model.Axes.Add(up);
        AddBars(model, picture.Bars, isTight: width < 14 * picture.Bars.Count);
        for (var i = 0; i < picture.Lines.Count; i++)
            AddLine(model, picture.Lines[i], PlotPen.ForLine(i));
        foreach (var (mark, i) in picture.Marks.OrderBy(m => m.X).Select((m, i) => (m, i)))
            AddMark(model, mark, (left + right) / 2, up.Maximum * (1 - 0.09 * i));
        foreach (var dot in picture.Dots)
            AddDot(model, dot, (left + right) / 2);
        var svg = new SvgRenderContext();
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(svg, new OxyRect(0, 0, width, height));
        // The library writes what went wrong into the picture; nobody should read that there.
        return model.GetLastPlotException() is { } wrong
            ? throw new InvalidOperationException("A plot was not drawn.", wrong)
            : svg.Written;
    }

    private static LinearAxis Axis(AxisPosition position, string title, double from, double to) =>
        new()
        {
            Position = position,
            Title = title,
            Minimum = from,
            Maximum = to,
            TickStyle = TickStyle.Outside,
            MinorTickSize = 0,
            TicklineColor = PlotPen.Ink,
            TextColor = PlotPen.Quiet,
            TitleColor = PlotPen.Quiet,
        };

    private static Func<double, string>? At(PlotData picture) =>
        picture.Bars.Count == 0
            ? picture.XWords
            : x => x == Math.Round(x) && x >= 0 && x < picture.Bars.Count ? picture.Bars[(int)x].Name : "";

    private static double Widest(PlotData picture) => picture.Bars.Max(b => SvgRenderContext.WidthOf(b.Name, Letters)) + 10;

    private static (double Left, double Right) Ends(PlotData picture)
    {
        if (picture.Bars.Count > 0)
            return (-0.6, picture.Bars.Count - 0.4);
        var places = picture.Lines.SelectMany(l => l.Points).Select(p => p.X).Concat(picture.Marks.Select(m => m.X)).ToList();
        places.AddRange(picture.Dots.Select(d => d.X));
        if (picture.Leftmost is { } first)
            places.Add(first);
        return places.Count == 0 ? (0, 1)
            : places.Min() == places.Max() ? (places[0] - 0.5, places[0] + 0.5)
            : (places.Min(), places.Max());
    }

    private static double Top(PlotData picture)
    {
        var top = picture
            .Lines.SelectMany(l => l.Points)
            .Select(p => Math.Max(p.Y, p.High ?? 0))
            .Concat(picture.Bars.Select(b => Math.Max(b.Height, b.High ?? 0)))
            .Concat(picture.Dots.Select(d => d.Y))
            .DefaultIfEmpty()
            .Max();
        return top > 0 ? top : 1;
    }

    private static void AddBars(PlotModel model, IReadOnlyList<PlotBar> bars, bool isTight)
    {
        var series = new RectangleBarSeries
        {
            FillColor = OxyColor.FromAColor(110, PlotPen.Quiet),
            StrokeColor = PlotPen.Ink,
            StrokeThickness = isTight ? 0 : 1,
        };
        model.Series.Add(series);
        for (var i = 0; i < bars.Count; i++)
        {
            series.Items.Add(new RectangleBarItem(i - 0.32, 0, i + 0.32, bars[i].Height));
            if (bars[i] is not { Low: { } low, High: { } high })
                continue;
            AddWhisker(model, (i, low), (i, high));
            if (isTight)
                continue;
            AddWhisker(model, (i - 0.14, low), (i + 0.14, low));
            AddWhisker(model, (i - 0.14, high), (i + 0.14, high));
        }
    }

    private static void AddWhisker(PlotModel model, (double X, double Y) from, (double X, double Y) to)
    {
        var line = new LineSeries { Color = PlotPen.Ink, StrokeThickness = 1.2 };
        line.Points.Add(new DataPoint(from.X, from.Y));
        line.Points.Add(new DataPoint(to.X, to.Y));
        model.Series.Add(line);
    }

    private static void AddLine(PlotModel model, PlotSeries line, PlotPen pen)
    {
        var band = new AreaSeries
        {
            Color = OxyColors.Transparent,
            Fill = OxyColor.FromAColor(34, pen.Colour),
            StrokeThickness = 0,
            MinimumSegmentLength = 0.2,
        };
        var drawn = new LineSeries
        {
            Color = pen.Colour,
            StrokeThickness = pen.Width,
            LineJoin = LineJoin.Miter,
            MinimumSegmentLength = 0.2,
            Dashes = pen.Dashes.Length == 0 ? null : [.. pen.Dashes.Select(d => d / pen.Width)],
        };
        PlotPoint? before = null;
        foreach (var point in line.Points)
        {
            if (line.Steps && before is { } level)
                Add(level with { X = point.X });
            Add(point);
            before = point;
        }
        if (band.Points.Count > 0)
            model.Series.Add(band);
        model.Series.Add(drawn);

        void Add(PlotPoint point)
        {
            drawn.Points.Add(new DataPoint(point.X, point.Y));
            if (point is not { Low: { } low, High: { } high })
                return;
            band.Points.Add(new DataPoint(point.X, high));
            band.Points2.Add(new DataPoint(point.X, low));
        }
    }

    private static void AddMark(PlotModel model, PlotMark mark, double middle, double height)
    {
        model.Annotations.Add(
            new LineAnnotation
            {
                Type = LineAnnotationType.Vertical,
                X = mark.X,
                Color = PlotPen.Accent,
                LineStyle = LineStyle.Solid,
                StrokeThickness = 1.5,
            }
        );
        model.Annotations.Add(
            new TextAnnotation
            {
                Text = mark.Text,
                TextPosition = new DataPoint(mark.X, height),
                TextColor = PlotPen.Accent,
                StrokeThickness = 0,
                Offset = new ScreenVector(mark.X > middle ? -5 : 5, 2),
                // Towards the middle, so that a word at either end stays inside.
                TextHorizontalAlignment = mark.X > middle ? HorizontalAlignment.Right : HorizontalAlignment.Left,
                TextVerticalAlignment = VerticalAlignment.Top,
            }
        );
    }

    // The word stands above its dot, towards the middle, so that none at either end is cut off.
    private static void AddDot(PlotModel model, PlotDot dot, double middle) =>
        model.Annotations.Add(
            new PointAnnotation
            {
                X = dot.X,
                Y = dot.Y,
                Size = dot.IsNow ? 6 : 5,
                Shape = dot.IsNow ? MarkerType.Circle : MarkerType.Square,
                Fill = dot.IsNow ? PlotPen.Accent : OxyColors.Transparent,
                Stroke = dot.IsNow ? PlotPen.Accent : PlotPen.Ink,
                StrokeThickness = 2,
                Text = dot.Text,
                TextColor = dot.IsNow ? PlotPen.Accent : PlotPen.Ink,
                TextHorizontalAlignment = dot.X > middle ? HorizontalAlignment.Right : HorizontalAlignment.Left,
                TextVerticalAlignment = VerticalAlignment.Bottom,
                TextMargin = 6,
            }
        );
}

/// <summary>What tells one line from another: a pattern and a colour, never a colour alone.</summary>
/// <param name="Token">The colour's name in tokens.css: the picture carries the name, so that dark and paper have their own.</param>
public sealed record PlotPen(string Token, OxyColor Colour, double[] Dashes, double Width)
{
    public static readonly OxyColor Ink = OxyColor.FromRgb(0x25, 0x1f, 0x1c);
    public static readonly OxyColor Quiet = OxyColor.FromRgb(0x5d, 0x53, 0x4a);
    public static readonly OxyColor Rule = OxyColor.FromRgb(0xd6, 0xcc, 0xbd);
    public static readonly OxyColor Accent = OxyColor.FromRgb(0x68, 0x20, 0x4b);
    private static readonly OxyColor Edge = OxyColor.FromRgb(0x81, 0x76, 0x6a);
    private static readonly OxyColor Hair = OxyColor.FromRgb(0x54, 0x45, 0x3b);

    private static readonly PlotPen[] All =
    [
        new("ink", Ink, [], 2),
        new("accent", Accent, [9, 4], 2.2),
        new("hair", Hair, [2, 3], 2.4),
        new("quiet", Quiet, [12, 4, 2, 4], 2),
        new("edge", Edge, [], 4),
        new("accent", Accent, [2, 5], 3.2),
    ];

    public static int Count => All.Length;

    public string DashText => string.Join(' ', Dashes);

    public static PlotPen ForLine(int line) => All[line % All.Length];

    /// <summary>The name a colour goes by in the style sheet.</summary>
    public static string TokenOf(OxyColor colour)
    {
        var opaque = OxyColor.FromAColor(255, colour);
        return opaque == Rule ? "rule" : Array.Find(All, pen => pen.Colour == opaque)?.Token ?? "ink";
    }
}
