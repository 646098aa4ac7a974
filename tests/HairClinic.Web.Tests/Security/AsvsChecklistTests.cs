using System.Text.RegularExpressions;
using HairClinic.Web.Tests.Layout;

namespace HairClinic.Web.Tests.Security;

public sealed partial class AsvsChecklistTests
{
    /// <summary>
    /// How many requirements of levels 1 and 2 each section of the OWASP ASVS 5.0.0 has, counted in its published table (CSV, en); level 3's
    /// are numbered last in each section. 253 in all, 70 of level 1.
    /// </summary>
    private const string Sections = """
        1.1:2 1.2:9 1.3:11 1.4:3 1.5:2 2.1:3 2.2:3 2.3:4 2.4:1 3.2:2 3.3:4 3.4:6 3.5:5 3.7:2 4.1:3 4.2:1 4.3:2 4.4:4 5.1:1 5.2:3 5.3:2 5.4:3
        6.1:3 6.2:12 6.3:4 6.4:4 6.5:5 6.6:3 6.8:4 7.1:3 7.2:4 7.3:2 7.4:5 7.5:2 7.6:2 8.1:2 8.2:3 8.3:1 8.4:1 9.1:3 9.2:4
        10.1:2 10.2:2 10.3:4 10.4:11 10.5:5 10.6:2 10.7:3 11.1:2 11.2:3 11.3:3 11.4:4 11.5:1 11.6:1 12.1:3 12.2:2 12.3:4
        13.1:1 13.2:5 13.3:2 13.4:5 14.1:2 14.2:4 14.3:3 15.1:3 15.2:3 15.3:7 16.1:1 16.2:5 16.3:4 16.4:3 16.5:3 17.1:1 17.2:4 17.3:2
        """;

    private static readonly Row[] Rows =
    [
        .. File.ReadLines(Path.Combine(SourceTree.Root, "deploy", "security", "asvs-5.0-level-2.md"))
            .Where(l => l.StartsWith("| V", StringComparison.Ordinal))
            .Select(l => l.Trim('|', ' ').Split(" | "))
            .Select(c => new Row(c[0], c[1], c[2], c[3], c[4])),
    ];

    [Fact]
    public void Each_requirement_of_the_standard_has_one_row()
    {
        var asked =
            from section in Sections.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            let parts = section.Split(':')
            from number in Enumerable.Range(1, int.Parse(parts[1]))
            select $"V{parts[0]}.{number}";

        Assert.Equal(asked, Rows.Select(r => r.Number));
        Assert.Equal(253, Rows.Length);
        Assert.Equal(70, Rows.Count(r => r.Level == "1"));
    }

    [Fact]
    public void What_is_met_names_a_file_that_exists()
    {
        var offenders =
            from row in Rows
            let paths = Quoted().Matches(row.Because).Select(m => m.Groups[1].Value).Where(p => p.Contains('/')).ToList()
            where row.State == "met" && paths.Count == 0 || paths.Any(p => !Path.Exists(Path.Combine(SourceTree.Root, p)))
            select $"{row.Number}: {row.Because}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void What_is_not_met_says_why()
    {
        Assert.All(Rows, r => Assert.Contains(r.State, new[] { "met", "not applicable", "open" }));
        Assert.Empty(Rows.Where(r => r.Because.Length < 5).Select(r => r.Number));
        Assert.Empty(Rows.Where(r => r.Asked.Split(' ').Length > 12).Select(r => r.Number));
    }

    private sealed record Row(string Number, string Level, string Asked, string State, string Because);

    // Paths begin with a folder of the repository; other code stands in quotes too.
    [GeneratedRegex("`((?:src|tests|deploy)/[^`]+)`")]
    private static partial Regex Quoted();
}
