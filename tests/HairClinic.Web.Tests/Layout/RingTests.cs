using System.Text.RegularExpressions;

namespace HairClinic.Web.Tests.Layout;

/// <summary>Where a client's page says "ring", in a sentence of its own or a refusal, the number stands there to be tapped.</summary>
public sealed partial class RingTests
{
    // Nobody knows yet who reads these, and so not whose number it would be.
    private static readonly string[] Strangers = ["AskLink"];

    // Shows the number the letter's token leads to; without a token that works nobody is known.
    private static readonly string[] WithNumberOfTheirOwn = ["MyNewAddress"];

    [Fact]
    public void Every_page_of_a_client_that_says_ring_shows_whom()
    {
        var saying = Directory
            .GetDirectories(Path.Combine(SourceTree.Web, "Features", "MyHair"))
            .Where(folder => SourceTree.Files(folder, ".cs", ".razor").Any(file => Ring().IsMatch(File.ReadAllText(file))))
            .ToList();

        Assert.InRange(saying.Count, 7, 40);
        Assert.Empty(
            saying
                .Where(folder =>
                    !SourceTree.Files(folder, ".razor").Any(f => File.ReadAllText(f).Contains("<RingSalon", StringComparison.Ordinal))
                )
                .Select(folder => Path.GetFileName(folder)!)
                .Except(Strangers)
                .Except(WithNumberOfTheirOwn)
        );
    }

    // Only "Ring", the word on the button itself, is no sentence.
    [GeneratedRegex("""\"[^"]*\b[Rr]ing\b[^"]*[ .,:][^"]*\"|, "(Usual|TakenBack)"\)""")]
    private static partial Regex Ring();
}
