using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Domain.Wear;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Language;

namespace HairClinic.Web.Tests.Layout;

/// <summary>Whatever a client can read on their own pages is there in each language, with the same blanks to fill in.</summary>
public sealed partial class ClientLanguageTests
{
    private static readonly string[] Read =
    [
        "Features/MyHair",
        "Ui/Wear/WearLine.razor",
        "Ui/Wear/WearLineLane.razor",
        "Ui/Wear/WearLineSentence.cs",
        "Ui/Wear/LiftFirstAid.razor",
        "Ui/Dates.cs",
        "Ui/Countdown.razor",
        "Ui/Feedback/ErrorSummary.razor",
        "Ui/Fields/FieldFrame.razor",
        "Shell/ClientLayout.razor",
        "Shell/Limits/TooLargeDocument.razor",
        "Shell/Limits/TooOftenDocument.razor",
        "Shell/ClientPageDocument.razor",
        "Shell/SkipLink.razor",
        "Shell/RefusalNotice.razor",
        "Accounts/SignInLinkStore.cs",
        "Accounts/AddressChangeNotices.cs",
        "Data/Books/LiftReporter.cs",
        "Data/Writes/WriteOnce.cs",
        "Privacy/ClientTakeOut.cs",
    ];

    // Pages of this area that the staff read.
    private static readonly string[] Staff = ["Features/MyHair/InviteClient"];

    /// <summary>Two letters each; English is the key, or stands beside it.</summary>
    public static TheoryData<string> Translated => [.. Languages.Spoken.Select(l => l.Code).Where(code => code != "en")];

    private static readonly ResourceSet English = In(CultureInfo.InvariantCulture);

    [Theory]
    [MemberData(nameof(Translated))]
    public void Every_sentence_a_client_can_read_is_there(string language)
    {
        var said = In(CultureInfo.GetCultureInfo(language));
        var missing = Keys().Distinct().Where(key => said.GetString(key) is null).Order(StringComparer.Ordinal);

        Assert.Empty(missing);
    }

    [Theory]
    [MemberData(nameof(Translated))]
    public void Each_translation_fills_in_what_the_English_does(string language)
    {
        var words = In(CultureInfo.GetCultureInfo(language));
        var offenders = Keys()
            .Distinct()
            .Where(key => words.GetString(key) is { } said && !Blanks(said).SetEquals(Blanks(English.GetString(key) ?? key)))
            .Order(StringComparer.Ordinal);

        Assert.Empty(offenders);
    }

    [Fact]
    public void The_keys_are_found_at_all() => Assert.InRange(Keys().Distinct().Count(), 150, 1000);

    private static HashSet<string> Blanks(string text) => [.. Blank().Matches(text).Select(m => m.Value)];

    private static IEnumerable<string> Keys() =>
        Files()
            .SelectMany(file => Said().Matches(File.ReadAllText(file)))
            .Select(m => Regex.Unescape(m.Groups[1].Value))
            .Append(Web.Accounts.TooBusyException.Sentence)
            .Concat(Enum.GetValues<UnitState>().Where(s => !s.IsGone()).Select(s => KeyOf(s, "Own")))
            .Concat([.. Of<CareTopic>(), .. Of<CareTopic>("Usual"), .. Of<ConsentSubject>(), .. Of<ConsentSubject>("TakenBack")])
            .Concat([
                .. Of<ConsentWay>("Own"),
                .. Of<PhotoKind>(),
                .. Of<LiftZone>(),
                .. Of<SinceWhen>("Own"),
                .. Of<AccessAction>("Own"),
                .. Of<StaffRole>("Own"),
            ])
            .Concat([.. Of<DueRuleName>(), .. Of<DueRuleName>("OfOne"), .. Of<DueRuleName>("Own")])
            .Concat(CureWords())
            .Concat(BondRefusals())
            .Concat(TradeDefaults.MakeServices().Where(s => s.OfferedToClients).Select(s => s.Name));

    private static ResourceSet In(CultureInfo culture) =>
        new ResourceManager(typeof(Words)).GetResourceSet(culture, createIfNotExists: true, tryParents: false)
        ?? throw new InvalidOperationException($"There is no Language/Words.{culture.Name}.resx.");

    private static IEnumerable<string> Of<T>(string? place = null)
        where T : struct, Enum => Enum.GetValues<T>().Select(value => KeyOf(value, place));

    private static string KeyOf(Enum value, string? place)
    {
        var key = $"{value.GetType().Name}.{value}";
        return place is not null && English.GetString($"{key}.{place}") is not null ? $"{key}.{place}" : key;
    }

    // What the client's own report of a lift can be refused with.
    private static IEnumerable<string> BondRefusals()
    {
        var source = File.ReadAllText(Path.Combine(SourceTree.Root, "src", "HairClinic.Domain", "Bonding", "Bond.cs"));
        var from = source.IndexOf("void ReportLift(", StringComparison.Ordinal);
        return Said().Matches(source[from..source.IndexOf("void Remove(", StringComparison.Ordinal)]).Select(m => m.Groups[1].Value);
    }

    private static IEnumerable<string> CureWords()
    {
        var made = NodaTime.Instant.FromUtc(2027, 2, 3, 10, 0);
        foreach (var hour in new[] { 1, 10, 22 })
            yield return CureAdvice.SentenceAt(made, made + NodaTime.Duration.FromHours(24), made + NodaTime.Duration.FromHours(hour));
    }

    private static IEnumerable<string> Files() =>
        from name in Read
        let path = Path.Combine(SourceTree.Web, name)
        from file in Directory.Exists(path) ? SourceTree.Files(path, ".cs", ".razor") : [path]
        where !Staff.Any(s => SourceTree.Named(file).Contains(s, StringComparison.Ordinal))
        select file;

    [GeneratedRegex("""(?:\bL\[|\bwords\[|Refusal\(|WithMessage\(|Label="@?L\[)\s*"((?:[^"\\]|\\.)+)"(?!\s*\+)""")]
    private static partial Regex Said();

    [GeneratedRegex(@"\{\d\}")]
    private static partial Regex Blank();
}
