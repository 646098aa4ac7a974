using System.Globalization;
using System.Xml.Linq;
using Bunit;
using HairClinic.Web.Ui.Plots;

namespace HairClinic.Web.Tests.Ui.Plots;

public sealed class PlotTests : UiTestContext
{
    private static readonly PlotData Curves = new("Days", "Still holding", "0%")
    {
        Lines =
        [
            new("Harbour", [new(0, 1, 1, 1), new(20, 0.8, 0.6, 0.9), new(40, 0.5, 0.3, 0.7)], Steps: true),
            new("Quarry <2>", [new(0, 1), new(30, 0.4)], Steps: true),
        ],
        Marks = [new(25, "Today & later")],
        Highest = 1,
    };

    private static readonly PlotData Bars = new("Week", "Minutes", "0")
    {
        Bars = [new("1 Feb", 120, 90, 160), new("8 Feb", 200, 150, 260)],
        Lines = [new("Open", [new(-0.5, 180), new(1.5, 180)])],
    };

    private static readonly PlotData Dots = new("Units", "Days", "0.#")
    {
        Lines = [new("Curve", [new(0.2, 4), new(0.6, 1)])],
        Dots = [new(0.4, 2, "now", IsNow: true), new(1.2, 0.5, "one & two")],
        Leftmost = 0,
    };

    [Fact]
    public void What_is_drawn_carries_no_style_of_its_own_and_is_well_formed()
    {
        foreach (var picture in new[] { Curves, Bars, Dots })
        {
            var drawn = Parsed(picture);
            Assert.DoesNotContain(drawn.Descendants(), e => e.Attribute("style") is not null || e.Name.LocalName is "style" or "script");
            Assert.Equal(["polygon", "polyline", "text"], drawn.Elements().Select(e => e.Name.LocalName).Distinct().Order());
        }
    }

    [Fact]
    public void A_curve_stays_level_until_its_next_step()
    {
        var line = Points(Parsed(Curves).Elements("polyline").Single(e => Is(e, "stroke-ink", "2") && Points(e).Count == 5));

        Assert.Equal((line[0].Y, line[2].Y), (line[1].Y, line[3].Y));
        Assert.Equal((line[1].X, line[3].X), (line[2].X, line[4].X));
        Assert.True(line[4].Y > line[2].Y && line[2].Y > line[0].Y, "SVG counts downwards.");
    }

    [Fact]
    public void Groups_differ_by_pattern_as_well_as_by_colour()
    {
        var pens = Enumerable.Range(0, PlotPen.Count).Select(PlotPen.ForLine).ToList();

        Assert.Equal(PlotPen.Count, pens.Select(p => (p.DashText, p.Width)).Distinct().Count());
    }

    [Fact]
    public void Everything_lies_inside_the_picture()
    {
        foreach (var picture in new[] { Curves, Bars, Dots })
        foreach (var (x, y) in Parsed(picture).Elements().Where(e => e.Attribute("points") is not null).SelectMany(Points))
        {
            Assert.InRange(x, -0.1, 340.1);
            Assert.InRange(y, -0.1, 280.1);
        }
    }

    [Fact]
    public void A_plot_says_in_words_what_can_be_seen_and_has_its_numbers_behind_it()
    {
        var plot = Render<Plot>(p => p.Add(x => x.Picture, Bars).Add(x => x.Label, "Minutes by week, rising."));

        Assert.All(plot.FindAll("svg[role=img]"), svg => Assert.Equal("Minutes by week, rising.", svg.GetAttribute("aria-label")));
        Assert.Equal(["1 Feb", "Minutes", "120", "90–160"], plot.FindAll("tbody tr")[0].Children.Select(c => c.TextContent));
        Assert.Contains("Open", plot.Find(".pens").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_has_its_word_its_shape_and_a_row_of_the_table()
    {
        var drawn = Parsed(Dots);

        // A full dot for what holds today, the edges of a square for the other.
        Assert.Contains(drawn.Elements("polygon"), e => e.Attribute("class")?.Value == "fill-accent");
        Assert.Contains(drawn.Elements("polyline"), e => Is(e, "stroke-ink", "2") && Points(e).Count == 5);
        Assert.Equal(["now", "one & two"], drawn.Elements("text").Select(t => t.Value).Where(t => t is "now" or "one & two"));
        var small = Render<Plot>(p => p.Add(x => x.Picture, Dots).Add(x => x.Label, "Fewer days.").Add(x => x.Small, true));
        Assert.Single(small.FindAll("svg[role=img]"));
        Assert.Equal(["0.4", "now", "2", ""], small.FindAll("tbody tr")[2].Children.Select(c => c.TextContent));
    }

    [Fact]
    public void Numbers_along_the_side_are_written_as_the_reader_writes_them()
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");

        var drawn = Parsed(new PlotData("x", "y", "0.0") { Lines = [new("a", [new(0, 0.5), new(1, 1)])] });

        Assert.Contains(drawn.Elements("text"), t => t.Value.Contains("0,5", StringComparison.Ordinal));
    }

    [Fact]
    public void A_picture_of_nothing_or_of_one_point_is_still_a_picture()
    {
        Assert.NotEmpty(Parsed(new PlotData("x", "y", "0")).Elements());
        Assert.NotEmpty(Parsed(new PlotData("x", "y", "0") { Lines = [new("a", [new(3, 0)])] }).Elements());
    }

    private static XElement Parsed(PlotData picture) => XElement.Parse($"<svg>{PlotRenderer.Draw(picture, 340, 280)}</svg>");

    private static bool Is(XElement e, string name, string width) =>
        e.Attribute("class")?.Value == name && e.Attribute("stroke-width")?.Value == width;

    private static List<(double X, double Y)> Points(XElement e) =>
        [
            .. e.Attribute("points")!
                .Value.Split(' ')
                .Select(p => p.Split(','))
                .Select(p => (double.Parse(p[0], CultureInfo.InvariantCulture), double.Parse(p[1], CultureInfo.InvariantCulture))),
        ];
}
