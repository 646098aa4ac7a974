using System.Text.RegularExpressions;

namespace HairClinic.Web.Tests.Layout;

public sealed partial class FileLayoutTests
{
    [Fact]
    public void Files_stay_under_their_ceilings()
    {
        var offenders =
            from file in SourceTree.Files(SourceTree.Root, ".cs", ".razor")
            let name = SourceTree.Named(file)
            where !name.Contains("/Migrations/", StringComparison.Ordinal) && !name.StartsWith("artifacts/", StringComparison.Ordinal)
            let ceiling = name.EndsWith(".razor", StringComparison.Ordinal) ? 200
            : name.StartsWith("tests/", StringComparison.Ordinal) ? 500
            : 400
            let lines = File.ReadLines(file).Count()
            where lines > ceiling
            select $"{name}: {lines} lines";

        Assert.Empty(offenders);
    }

    [Fact]
    public void Every_word_on_a_page_goes_through_the_localiser()
    {
        var offenders =
            from file in SourceTree.Files(SourceTree.Web, ".razor")
            let text = File.ReadAllText(file)
            let markup = Comments().Replace(CodeBlock().Replace(text, ""), "")
            from Match match in BareText().Matches(markup)
            where match.Value.Trim().Length > 1
            select $"{SourceTree.Named(file)}: {match.Groups[1].Value.Trim()}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void No_page_carries_inline_style_or_script()
    {
        var offenders = SourceTree.Files(SourceTree.Web, ".razor").Where(f => Inline().IsMatch(File.ReadAllText(f)));

        Assert.Empty(offenders.Select(SourceTree.Named));
    }

    [Fact]
    public void A_line_of_a_page_is_read_without_scrolling()
    {
        // A sentence is its own key and is never cut: it may be longer by itself, on a line with little beside it.
        var offenders =
            from file in SourceTree.Files(SourceTree.Web, ".razor")
            from line in File.ReadLines(file).Select((text, i) => (Text: text, Number: i + 1))
            where line.Text.Length > 160 && Sentence().Replace(line.Text, "", 1).Trim().Length > 30
            select $"{SourceTree.Named(file)}:{line.Number}: {line.Text.Length} characters";

        Assert.Empty(offenders);
    }

    // A field in a page is told from a local and from a parameter by its name, as everywhere.
    [Fact]
    public void A_pages_private_fields_begin_with_an_underscore()
    {
        var offenders =
            from file in SourceTree.Files(SourceTree.Web, ".razor", ".razor.cs")
            from Match field in Field().Matches(File.ReadAllText(file))
            select $"{SourceTree.Named(file)}: {field.Groups[1].Value}";

        Assert.Empty(offenders);
    }

    // A test that takes any refusal for the right one passes when another rule gets in the way first.
    [Fact]
    public void A_refusal_is_tested_by_which_it_is()
    {
        var offenders =
            from file in SourceTree.Files(Path.Combine(SourceTree.Root, "tests"), ".cs")
            from line in File.ReadLines(file).Select((text, i) => (Text: text.Trim(), Number: i + 1))
            where AnyRefusal().IsMatch(line.Text)
            select $"{SourceTree.Named(file)}:{line.Number}";

        Assert.Empty(offenders);
    }

    [GeneratedRegex(@"""[^""]{100,}""")]
    private static partial Regex Sentence();

    [GeneratedRegex(
        @"^    private (?:readonly )?(?!static|const|event|sealed|record|class|enum|async|delegate|ref|partial)[\w<>\[\](),.? ]+? ([a-z]\w*)(?: =(?!>)[^;]*)?;",
        RegexOptions.Multiline
    )]
    private static partial Regex Field();

    [GeneratedRegex(@"^(await )?Assert\.Throws(Async)?<Refusal>.*(;|=>)$")]
    private static partial Regex AnyRefusal();

    [GeneratedRegex(@"@code\s*\{[\s\S]*\z")]
    private static partial Regex CodeBlock();

    [GeneratedRegex(@"@\*[\s\S]*?\*@|<!--[\s\S]*?-->")]
    private static partial Regex Comments();

    // Text between two tags that begins with a letter: markup, not an expression. A line of C# ends in ; or {.
    [GeneratedRegex(@"(?<=[a-z""/]>)[ \t]*([A-Z][a-z]+[^<@{};()]*)(?=</)")]
    private static partial Regex BareText();

    [GeneratedRegex(@"\sstyle=""|<style|<script(?![^>]*\bsrc=)|\son(click|change|load|submit)=")]
    private static partial Regex Inline();
}
