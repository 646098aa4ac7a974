using OxyPlot;

namespace HairClinic.Web.Ui.Plots;

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

    public static PlotPen Of(int line) => All[line % All.Length];

    /// <summary>The name a colour goes by in the style sheet.</summary>
    public static string TokenOf(OxyColor colour)
    {
        var opaque = OxyColor.FromAColor(255, colour);
        return opaque == Rule ? "rule" : Array.Find(All, pen => pen.Colour == opaque)?.Token ?? "ink";
    }
}
