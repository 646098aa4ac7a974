using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Language;
using HairClinic.Web.Privacy;
using HairClinic.Web.Ui.Care;
using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Tests.Layout;

/// <summary>Whatever a client can read on their own pages is there in Spanish, with the same blanks to fill in.</summary>
public sealed partial class SpanishTests
{
    private static readonly string[] Read =
    [
        "Features/MyHair",
        "Ui/Wear/DueReasonText.cs",
        "Ui/Wear/WearLine.razor",
        "Ui/Wear/WearLineLane.razor",
        "Ui/Wear/WearLineSentence.cs",
        "Ui/Wear/LiftFirstAid.razor",
        "Ui/Wear/ZoneText.cs",
        "Ui/Dates.cs",
        "Ui/Countdown.razor",
        "Ui/Care/AftercareText.cs",
        "Ui/Feedback/ErrorSummary.razor",
        "Ui/Fields/FieldFrame.razor",
        "Shell/ClientLayout.razor",
        "Shell/Limits/TooLarge.razor",
        "Shell/Limits/TooOften.razor",
        "Shell/OwnDocument.razor",
        "Shell/SkipLink.razor",
        "Shell/RefusalNotice.razor",
        "Accounts/SignInLinkStore.cs",
        "Accounts/AddressLetters.cs",
        "Data/Books/LiftReports.cs",
        "Data/Writes/WriteOnce.cs",
        "Privacy/ClientTakeOut.cs",
    ];

    // Pages of this area that the staff read.
    private static readonly string[] Staff = ["Features/MyHair/InviteClient"];

    private static readonly ResourceSet Spanish = new ResourceManager(typeof(Words)).GetResourceSet(
        CultureInfo.GetCultureInfo("es"),
        createIfNotExists: true,
        tryParents: false
    )!;

    [Fact]
    public void Every_sentence_a_client_can_read_is_there_in_Spanish()
    {
        var missing = Keys().Distinct().Where(key => Spanish.GetString(key) is null).Order(StringComparer.Ordinal);

        Assert.Empty(missing);
    }

    [Fact]
    public void Each_translation_fills_in_what_the_English_does()
    {
        var offenders = Keys()
            .Distinct()
            .Where(key => Spanish.GetString(key) is { } said && !Blanks(said).SetEquals(Blanks(key)))
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
            .Concat(Enum.GetValues<UnitState>().Where(s => !s.IsGone()).Select(OwnPageText.Order))
            .Concat(Enum.GetValues<CareTopic>().SelectMany(t => new[] { AftercareText.Title(t), AftercareText.Usual(t) }))
            .Append(AftercareText.Caution)
            .Append(Web.Accounts.TooBusyException.Sentence)
            .Concat(Enum.GetValues<ConsentSubject>().SelectMany(s => new[] { ConsentWords.Of(s), OwnConsentText.Follows(s) }))
            .Concat(Enum.GetValues<PhotoKind>().Select(OwnPhotoText.Of))
            .Concat(Enum.GetValues<AccessDeed>().Select(OwnSeenText.Of))
            .Concat(Enum.GetNames<StaffRole>().Select(OwnSeenText.OfRole))
            .Concat(CureWords())
            .Concat(Enum.GetValues<Domain.Bonding.LiftZone>().Select(ZoneText.Of))
            .Concat(BondRefusals())
            .Concat(TradeDefaults.MakeServices().Where(s => s.OfferedToClients).Select(s => s.Name));

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
            yield return OwnPageText.Cure(made, made + NodaTime.Duration.FromHours(24), made + NodaTime.Duration.FromHours(hour));
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
