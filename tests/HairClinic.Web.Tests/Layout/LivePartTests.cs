using System.Text.RegularExpressions;

namespace HairClinic.Web.Tests.Layout;

/// <summary>
/// Every part of a page that listens says when it does, so that taps before that are kept; every form that is carried out once
/// has its id in the page, so that it is the same after the page had to be loaded again.
/// </summary>
public sealed partial class LivePartTests
{
    // Two components of different areas may have one name.
    private static readonly ILookup<string, string> Sources = SourceTree
        .Files(SourceTree.Web, ".razor")
        .ToLookup(f => Path.GetFileNameWithoutExtension(f), File.ReadAllText);

    private static readonly List<(string Key, string Value)> Each = [.. Sources.SelectMany(named => named.Select(s => (named.Key, s)))];

    [Fact]
    public void Every_live_part_says_when_it_listens()
    {
        var pages = Each.Where(s => LivePage().IsMatch(s.Value)).Select(s => s.Key).ToList();
        var islands = Each.SelectMany(s => Island().Matches(s.Value))
            .Select(m => m.Groups[1].Value)
            .Where(n => n != "InteractiveMarker")
            .ToList();
        Assert.NotEmpty(islands);

        var silent = pages.Concat(islands).Distinct().Where(name => !Sources[name].All(s => Says(s, "<InteractiveMarker")));

        Assert.Empty(silent);
    }

    [Fact]
    public void Every_form_that_is_carried_out_once_has_its_id_in_the_page()
    {
        var forms = Each.Where(s => s.Value.Contains(" Submission<", StringComparison.Ordinal)).ToList();
        Assert.True(forms.Count > 20);

        var without = forms.Where(s => !Says(s.Value, "<InteractiveMarker Form=")).Select(s => s.Key);

        Assert.Empty(without);
    }

    [Fact]
    public void What_is_heard_with_each_key_is_bound_so_that_an_answer_never_overwrites_what_was_typed_since()
    {
        var unbound = Each.Where(s => Echoed().IsMatch(s.Value)).Select(s => s.Key);

        Assert.Empty(unbound);
    }

    // The settings' pages stand in a frame that says it for all of them.
    private static bool Says(string source, string words) =>
        source.Contains(words, StringComparison.Ordinal)
        || (
            source.Contains("<EditFrame", StringComparison.Ordinal)
            && Sources["EditFrame"].Single().Contains(words, StringComparison.Ordinal)
        );

    [GeneratedRegex(@"^@rendermode InteractiveServer", RegexOptions.Multiline)]
    private static partial Regex LivePage();

    [GeneratedRegex(@"<(\w+) @rendermode=")]
    private static partial Regex Island();

    [GeneratedRegex(@"<(input|textarea)[^>]*\bvalue=[^>]*@oninput=")]
    private static partial Regex Echoed();
}
