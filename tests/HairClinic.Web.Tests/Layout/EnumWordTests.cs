using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Resources;
using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using HairClinic.Web.Language;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Tests.Layout;

/// <summary>What a member of an enum is called stands once in the resources: EnumName.Member, and EnumName.Member.Place where it is said otherwise.</summary>
public sealed partial class EnumWordTests
{
    private static readonly Assembly Web = typeof(Words).Assembly;

    private static readonly List<string[]> Kept =
    [
        .. new ResourceManager(typeof(Words))
            .GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!
            .Cast<DictionaryEntry>()
            .Select(entry => (string)entry.Key)
            .Where(key => Member().IsMatch(key))
            .Select(key => key.Split('.')),
    ];

    [Fact]
    public void Every_member_that_can_be_shown_has_its_word()
    {
        var words = Kept.Where(key => key.Length == 2).Select(key => $"{key[0]}.{key[1]}").ToHashSet();
        var members = Shown().SelectMany(type => Enum.GetNames(type).Select(name => $"{type.Name}.{name}"));

        Assert.Empty(members.Except(words));
    }

    [Fact]
    public void No_word_is_kept_that_nobody_asks_for()
    {
        var shown = Shown().ToDictionary(type => type.Name);

        Assert.InRange(shown.Count, 30, 100);
        Assert.Empty(
            Kept.Where(key => !shown.TryGetValue(key[0], out var type) || !Enum.GetNames(type).Contains(key[1]))
                .Select(key => string.Join('.', key))
        );
    }

    // A place that is mistyped would say what is said everywhere else.
    [Fact]
    public void Each_place_that_is_asked_for_has_words_and_each_that_has_words_is_asked_for()
    {
        var asked = SourceTree
            .Files(SourceTree.Web, ".cs", ".razor")
            .SelectMany(file => Asked().Matches(File.ReadAllText(file)))
            .SelectMany(call => Place().Matches(call.Value))
            .Select(place => place.Groups[1].Value);

        Assert.Equal(
            Kept.Where(key => key.Length == 3).Select(key => key[2]).Distinct().Order(StringComparer.Ordinal),
            asked.Distinct().Order(StringComparer.Ordinal)
        );
    }

    /// <summary>The enums whose words the program asks for, as its compiled calls say, and those of edited forms and of questions on habits.</summary>
    private static HashSet<Type> Shown() =>
        [
            .. Called(),
            .. Web.GetTypes()
                .SelectMany(type => type.GetProperties())
                .Where(property => property.GetCustomAttribute<FieldAttribute>() is not null)
                .Select(property => Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType)
                .Where(type => type.IsEnum),
            .. CareHabits.All.SelectMany(question => question.Choices).Select(choice => choice.GetType()),
        ];

    private static List<Type> Called()
    {
        using var file = new PEReader(File.OpenRead(Web.Location));
        var reader = file.GetMetadataReader();
        List<Type> found = [];
        for (var row = 1; row <= reader.GetTableRowCount(TableIndex.MethodSpec); row++)
        {
            var call = reader.GetMethodSpecification(MetadataTokens.MethodSpecificationHandle(row));
            if (
                call.Method.Kind != HandleKind.MethodDefinition
                || Web.ManifestModule.ResolveMethod(MetadataTokens.GetToken(call.Method))!.DeclaringType != typeof(EnumWords)
            )
                continue;
            var signature = reader.GetBlobReader(call.Signature);
            signature.ReadSignatureHeader();
            signature.ReadCompressedInteger();
            if (signature.ReadSignatureTypeCode() == SignatureTypeCode.TypeHandle)
                found.Add(Web.ManifestModule.ResolveType(MetadataTokens.GetToken(signature.ReadTypeHandle())));
        }
        return found;
    }

    [GeneratedRegex(@"^[A-Z]\w+\.[A-Z]\w+(\.[A-Z]\w+)?$")]
    private static partial Regex Member();

    [GeneratedRegex(@"\b(Word|InEnglish)\([^;]*?\)\W")]
    private static partial Regex Asked();

    [GeneratedRegex(@"[,?:] ""([A-Z]\w+)""")]
    private static partial Regex Place();
}
