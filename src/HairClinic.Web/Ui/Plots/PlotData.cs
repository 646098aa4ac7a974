namespace HairClinic.Web.Ui.Plots;

/// <summary>What a plot shows: lines over numbers, bars side by side, and marked places along the bottom.</summary>
/// <param name="XTitle">With its unit, as "Days since the bond".</param>
/// <param name="Format">How a height is written, as .NET formats it; "0%" for shares.</param>
public sealed record PlotData(string XTitle, string YTitle, string Format)
{
    public IReadOnlyList<PlotSeries> Lines { get; init; } = [];

    /// <summary>In order from the left; the first stands at 0, so lines over bars count places.</summary>
    public IReadOnlyList<PlotBar> Bars { get; init; } = [];

    public IReadOnlyList<PlotMark> Marks { get; init; } = [];

    public IReadOnlyList<PlotDot> Dots { get; init; } = [];

    /// <summary>How a place along the bottom is written; a plain number where null.</summary>
    public Func<double, string>? XWords { get; init; }

    /// <summary>Where the picture begins on the left; at the first of what is shown where null.</summary>
    public double? Leftmost { get; init; }

    /// <summary>The top of the picture; as high as what is shown where null.</summary>
    public double? Highest { get; init; }
}

/// <summary>One line; at most <see cref="PlotPen.Count"/> of them can be told apart.</summary>
/// <param name="Steps">Stays level until the next point instead of leading there straight.</param>
public sealed record PlotSeries(string Name, IReadOnlyList<PlotPoint> Points, bool Steps = false);

/// <param name="Low">The band's lower edge; where either edge is missing there is no band.</param>
public readonly record struct PlotPoint(double X, double Y, double? Low = null, double? High = null);

/// <summary>One bar with the band its height may lie in.</summary>
public sealed record PlotBar(string Name, double Height, double? Low = null, double? High = null);

/// <summary>A place along the bottom with a word of its own, such as today.</summary>
public sealed record PlotMark(double X, string Text);

/// <summary>One place in the picture with a word of its own.</summary>
/// <param name="IsNow">What holds today: a full dot in the accent; the others are open squares.</param>
public sealed record PlotDot(double X, double Y, string Text, bool IsNow = false);
