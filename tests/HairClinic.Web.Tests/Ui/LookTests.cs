using System.Globalization;
using System.Text.RegularExpressions;

namespace HairClinic.Web.Tests.Ui;

/// <summary>
/// What the look promises of itself. Contrast is the ratio of WCAG 2.2 (relative luminance), 4.5 for text (criterion 1.4.3)
/// and 3 for the edges of controls (1.4.11): https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio, formula from memory.
/// </summary>
public sealed partial class LookTests
{
    private static readonly string Web = Path.Combine(Root(), "src", "HairClinic.Web");

    public static TheoryData<string, string, string, double> Pairs()
    {
        var data = new TheoryData<string, string, string, double>();
        foreach (var theme in new[] { "light", "dark" })
        {
            foreach (var ground in new[] { "paper", "sheet", "wash" })
            foreach (var text in new[] { "ink", "quiet", "accent" })
                data.Add(theme, text, ground, 4.5);
            data.Add(theme, "on-accent", "accent", 4.5);
            data.Add(theme, "paper", "ink", 4.5);
            data.Add(theme, "ink", "accent-wash", 4.5);
            data.Add(theme, "edge", "paper", 3);
            data.Add(theme, "edge", "sheet", 3);
            data.Add(theme, "hair", "sheet", 3);
        }
        return data;
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Words_and_edges_stand_out_from_their_ground(string theme, string front, string ground, double least)
    {
        var colours = Theme(theme);
        Assert.InRange(Contrast(colours[front], colours[ground]), least, 21);
    }

    [Fact]
    public void The_formula_gives_what_is_published_for_black_on_white() => Assert.Equal(21, Contrast("#000000", "#ffffff"), 6);

    [Fact]
    public void No_component_carries_a_style_or_a_script_of_its_own()
    {
        var offenders = Directory
            .EnumerateFiles(Web, "*.razor", SearchOption.AllDirectories)
            .Where(file => Forbidden().IsMatch(File.ReadAllText(file)))
            .Select(file => Path.GetRelativePath(Web, file));
        Assert.Empty(offenders);
    }

    [Fact]
    public void The_shared_style_sheets_stay_small() =>
        Assert.InRange(Directory.EnumerateFiles(Path.Combine(Web, "wwwroot"), "*.css").Sum(file => new FileInfo(file).Length), 1, 20_000);

    private static Dictionary<string, string> Theme(string theme)
    {
        var css = File.ReadAllText(Path.Combine(Web, "wwwroot", "tokens.css"));
        var blocks = css.Split("@media (prefers-color-scheme: dark)");
        var block = theme == "light" ? blocks[0] : blocks[1].Split("@media")[0];
        return Token().Matches(block).ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);
    }

    private static double Contrast(string one, string other)
    {
        var (first, second) = (Luminance(one), Luminance(other));
        return (Math.Max(first, second) + 0.05) / (Math.Min(first, second) + 0.05);
    }

    private static double Luminance(string hex)
    {
        double Channel(int at)
        {
            var share = int.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
        }
        return 0.2126 * Channel(1) + 0.7152 * Channel(3) + 0.0722 * Channel(5);
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "HairClinic.sln")))
            folder = folder.Parent;
        return folder.FullName;
    }

    [GeneratedRegex(@"--([a-z-]+): (#[0-9a-f]{6});")]
    private static partial Regex Token();

    [GeneratedRegex(@"\sstyle=""|<style|<script(?![^>]*\ssrc=)|\son[a-z]+=""(?!@)[a-z]+\(")]
    private static partial Regex Forbidden();
}
