using System.Reflection;
using System.Text.RegularExpressions;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;
using HairClinic.Web.Tests.Layout;
using Microsoft.Extensions.Configuration;

namespace HairClinic.Web.Tests.Mail;

public sealed partial class MailSettingsTests
{
    [Fact]
    public void A_setting_passed_as_nothing_is_none()
    {
        var settings = Read(
            ("Mail:Host", ""),
            ("Mail:Port", " "),
            ("Mail:Tls", ""),
            ("Mail:From", ""),
            ("Mail:Folder", ""),
            ("data", "/data")
        );

        Assert.Equal((null, 587, true), (settings.Host, settings.Port, settings.Tls));
        Assert.Equal(Path.Combine("/data", "mail"), settings.Folder);
    }

    [Theory]
    [InlineData("Mail:Port", "0", "Mail__Port")]
    [InlineData("Mail:Port", "seven", "Port")]
    [InlineData("Mail:From", "", "Mail__From")]
    [InlineData("Mail:From", "desk", "Mail__From")]
    [InlineData("Mail:Sender", "desk@practice.example", "Sender")]
    public void What_no_letter_could_be_sent_with_stops_the_start_and_names_the_setting(string setting, string value, string named)
    {
        var given = new Dictionary<string, string> { ["Mail:Host"] = "mail.example", ["Mail:From"] = "desk@practice.example" };
        given[setting] = value;

        var refused = Assert.Throws<InvalidOperationException>(() => Read([.. given.Select(g => (g.Key, g.Value))]));

        Assert.Contains(named, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("deploy/README.md")]
    [InlineData("deploy/env.example")]
    [InlineData("docker-compose.yml")]
    public void Whoever_sets_the_site_up_finds_every_setting_of_letters_and_addresses(string document)
    {
        var asked = typeof(MailSettings)
            .GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.SetMethod is not null)
            .Select(p => $"Mail__{p.Name}")
            .Append(SiteAddress.Setting.Replace(":", "__", StringComparison.Ordinal))
            // The folder is for trying things out on one's own machine; a container's own is nobody's to look into.
            .Where(s => document == "deploy/README.md" || s != "Mail__Folder")
            .ToList();
        var text = File.ReadAllText(Path.Combine(SourceTree.Root, document));

        Assert.Equal(8 + (document == "deploy/README.md" ? 1 : 0), asked.Count);
        Assert.All(asked, s => Assert.Matches($@"\b{s}\b", text));
    }

    [Fact]
    public void Every_setting_the_program_reads_stands_in_the_guide()
    {
        var read = SourceTree
            .Files(SourceTree.Web, ".cs")
            .SelectMany(f =>
                Setting().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value.Replace(":", "__", StringComparison.Ordinal))
            )
            .Distinct()
            .ToList();
        var guide = File.ReadAllText(Path.Combine(SourceTree.Root, "deploy", "README.md"));

        Assert.Contains("Keys__File", read);
        Assert.All(read, s => Assert.Contains(s, guide, StringComparison.Ordinal));
    }

    [Fact]
    public void What_compose_asks_for_stands_in_the_example_to_fill_in()
    {
        var asked = Asked()
            .Matches(File.ReadAllText(Path.Combine(SourceTree.Root, "docker-compose.yml")))
            .Select(m => m.Groups[1].Value)
            .Distinct();
        var example = File.ReadAllText(Path.Combine(SourceTree.Root, "deploy", "env.example"));

        Assert.All(asked, a => Assert.Matches($"(?m)^#?{a}=", example));
    }

    private static MailSettings Read(params (string Key, string Value)[] settings) =>
        MailSettings.ReadFrom(
            new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(s => s.Key, s => (string?)s.Value)).Build()
        );

    // A name with a colon inside quotes, where the configuration is asked for it.
    [GeneratedRegex("""(?:configuration\[|GetValue<\w+>\(|const string \w+ = )"([A-Z]\w+:[A-Z]\w+)""" + "\"")]
    private static partial Regex Setting();

    [GeneratedRegex(@"\$\{(\w+)")]
    private static partial Regex Asked();
}
