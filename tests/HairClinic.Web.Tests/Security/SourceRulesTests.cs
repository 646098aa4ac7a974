using System.Text.RegularExpressions;
using HairClinic.Web.Tests.Layout;

namespace HairClinic.Web.Tests.Security;

/// <summary>What our sources never do, or do in named places only.</summary>
public sealed class SourceRulesTests
{
    private const string Own = "../HairClinic.EmbeddedPostgres/";

    /// <param name="only">
    /// Where it may be: our own database server; sealed photos and keys; the console's words; letters of the demo; plots, whose every word is encoded. In memory stand only
    /// marks under a practice's or a sign-in's own id: that it was looked at, its language, its salons' names.
    /// </param>
    [Theory]
    [InlineData("markup made of text", @"MarkupString|\bAddMarkupContent\(", "Ui/Plots/")]
    [InlineData("code made of text", @"\bDynamicInvoke\(|CSharpScript|Assembly\.Load\(", "")]
    [InlineData("unsafe memory", @"\bunsafe\b(?! )|\bunsafe\s*\{|Marshal\.", "")]
    [InlineData("patterns made of input", @"new Regex\(", "")]
    [InlineData("calls to other sites", @"\bHttpClient\b|WebRequest|\bTcpClient\b|new Socket\(", Own)]
    [InlineData("commands to the system", @"Process\.Start|ProcessStartInfo", Own)]
    [InlineData("trust in any certificate", @"Certificate\w*Callback|TrustServerCertificate|DangerousAccept", "")]
    [InlineData(
        "broken or home-made cryptography",
        @"\bMD5\b|\bSHA1\b|TripleDES|\bDES\b|\bRC2\b|CipherMode\.|Pkcs1|RSAEncryptionPadding",
        ""
    )]
    [InlineData("guessable chance", @"\bRandom\.Shared|new Random\(", "Demo/")]
    [InlineData(
        "files",
        @"(?<!\.)\b(File|Directory)\.(Open|Read|Write|Create|Delete|Move|Copy|Append|Get)",
        Own + " Keys/ Data/Photos/SealedFiles.cs CommandLine/ Demo/ Data/Work/LetterFolder.cs"
    )]
    [InlineData(
        "things kept in memory for everybody",
        @"\bIMemoryCache\b|HybridCache|IDistributedCache",
        "Features/Settings/FirstRun/PracticePresence.cs Data/SalonNames.cs Accounts/SessionStore.cs Shell/PracticeCultureCache.cs"
    )]
    public void In_the_program_there_is_no(string what, string pattern, string only)
    {
        var allowed = only.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var offenders =
            from file in SourceTree.Files(SourceTree.Web, ".cs", ".razor").Concat(SourceTree.Files(SourceTree.EmbeddedPostgres, ".cs"))
            let name = Path.GetRelativePath(SourceTree.Web, file).Replace('\\', '/')
            where !name.Contains("Migrations/", StringComparison.Ordinal) && !allowed.Any(a => name.StartsWith(a, StringComparison.Ordinal))
            where File.ReadLines(file).Any(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal) && Regex.IsMatch(l, pattern))
            select $"{what}: {name}";

        Assert.Empty(offenders);
    }

    [Theory]
    [InlineData("markup or code made of text", @"innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function")]
    [InlineData("messages from other windows", @"postMessage|[""']message[""']")]
    [InlineData("calls to other sites", @"https?://(?!www\.w3\.org)|importScripts")]
    [InlineData("hindered pasting", @"[""']paste[""']|onpaste")]
    [InlineData("global names to be clobbered", @"\bwindow\.[a-z]\w*\s*=[^=]")]
    public void In_scripts_there_is_no(string what, string pattern)
    {
        var offenders = SourceTree.Files(SourceTree.Web, ".js").Where(f => Regex.IsMatch(File.ReadAllText(f), pattern));

        Assert.Empty(offenders.Select(f => $"{what}: {SourceTree.Named(f)}"));
    }

    [Fact]
    public void Each_form_says_how_it_is_sent()
    {
        // A form that only the live page sends is of the method "dialog"; without one the browser sends it as an address.
        var offenders =
            from file in SourceTree.Files(SourceTree.Web, ".razor")
            from Match form in Regex.Matches(File.ReadAllText(file), @"<form\b(?:[^>""]|""[^""]*"")*>")
            where !Regex.IsMatch(form.Value, @"\smethod=""(?:post|get|dialog)""")
            select $"{SourceTree.Named(file)}: {form.Value}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void The_browser_keeps_one_switch_and_what_was_typed_while_its_page_is_loaded_again()
    {
        var kept =
            from file in SourceTree.Files(SourceTree.Web, ".js")
            from Match use in Regex.Matches(File.ReadAllText(file), @"(?:local|session)Storage\.\w+\(([^,)]*)|indexedDB")
            select use.Groups[1].Value;

        // The second stands there between the unload and the load of one page only; never secrets, never what is confided (kept.js).
        Assert.Equal(["\"kept\"", "\"keys\""], kept.Distinct());
    }

    [Fact]
    public void Sensitive_data_logging_stays_off()
    {
        var offenders = SourceTree
            .Files(SourceTree.Root, ".cs", ".json")
            .Where(f => SourceTree.Named(f).StartsWith("src/", StringComparison.Ordinal))
            .Where(f =>
                Regex.IsMatch(File.ReadAllText(f), "EnableSensitiveDataLogging|EnableParameterLogging|Include Error Detail|UseHttpLogging")
            );

        Assert.Empty(offenders.Select(SourceTree.Named));
    }
}
