using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Language;

namespace HairClinic.Web.Tests.Layout;

/// <summary>Staff are shown a language only if every sentence of the program is there in it: what is missing is counted.</summary>
public sealed partial class StaffLanguageTests
{
    [Fact]
    public void Staff_read_the_practices_language_where_nothing_is_missing_in_it_and_English_else()
    {
        foreach (var (name, _) in Regions.Cultures)
        {
            var culture = CultureInfo.GetCultureInfo(name);
            Assert.Equal(Missing(culture).Count == 0, Languages.IsComplete(culture));
            Assert.Empty(Missing(Languages.CultureForStaff(culture, "ES")));
        }
    }

    [Fact]
    public void Spanish_lacks_most_of_what_staff_read()
    {
        // Far more than a few odd sentences: a practice that chose it would read two languages mixed.
        Assert.InRange(Missing(CultureInfo.GetCultureInfo("es-ES")).Count, 500, 5000);
        Assert.Equal("en-GB", Languages.CultureForStaff(CultureInfo.GetCultureInfo("es-ES"), "ES").Name);
        Assert.Equal("en-US", Languages.CultureForStaff(CultureInfo.GetCultureInfo("es-ES"), "US").Name);
        Assert.Equal("en-IE", Languages.CultureForStaff(CultureInfo.GetCultureInfo("en-IE"), "ES").Name);
    }

    // English is the key, or stands beside it: nothing can be missing in it.
    private static List<string> Missing(CultureInfo culture)
    {
        if (culture.TwoLetterISOLanguageName == "en")
            return [];
        var words = new ResourceManager(typeof(Words));
        var known =
            words.GetResourceSet(culture.Parent, createIfNotExists: true, tryParents: false)
            ?? throw new InvalidOperationException($"There is no Language/Words.{culture.Parent.Name}.resx.");
        var english = words.GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!;
        return
        [
            .. SourceTree
                .Files(SourceTree.Web, ".razor", ".cs")
                .SelectMany(file => Said().Matches(File.ReadAllText(file)))
                .Select(m => Regex.Unescape(m.Groups[1].Value))
                .Concat(english.Cast<DictionaryEntry>().Select(word => (string)word.Key))
                .Distinct()
                .Where(key => known.GetString(key) is null),
        ];
    }

    [GeneratedRegex("""(?:\bL\[|\bwords\[|Refusal\(|WithMessage\()\s*"((?:[^"\\]|\\.)+)"(?!\s*\+)""")]
    private static partial Regex Said();
}
