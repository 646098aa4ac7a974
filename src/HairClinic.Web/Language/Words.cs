using System.Resources;

namespace HairClinic.Web.Language;

/// <summary>Marks the one set of translations: an English sentence is its own key.</summary>
public sealed class Words;

/// <summary>What the members of an enum are called, once for every screen: their keys are EnumName.Member.</summary>
public static class EnumWords
{
    private static readonly ResourceManager Kept = new(typeof(Words));

    /// <param name="place">Where it may be said otherwise, EnumName.Member.Place; what is not, is said as everywhere.</param>
    public static string Word<T>(this IStringLocalizer words, T value, string? place = null, params object[] blanks)
        where T : struct, Enum =>
        place is not null && words[$"{Key(value)}.{place}", blanks] is { ResourceNotFound: false } there
            ? there
            : words[Key(value), blanks];

    /// <summary>The same of a member whose enum only the running program knows.</summary>
    public static string WordOfBoxed(this IStringLocalizer words, Enum value) => words[Key(value)];

    /// <summary>With a capital, where it stands alone: a choice, a label.</summary>
    public static string Label<T>(this IStringLocalizer words, T value)
        where T : struct, Enum
    {
        var word = words.Word(value);
        return char.ToUpper(word[0], CultureInfo.CurrentCulture) + word[1..];
    }

    /// <summary>Whatever language is read: in files and in what is kept.</summary>
    public static string InEnglish<T>(T value, string? place = null)
        where T : struct, Enum =>
        Kept.GetString(place is null ? Key(value) : $"{Key(value)}.{place}", CultureInfo.InvariantCulture) ?? Key(value);

    private static string Key(Enum value) => $"{value.GetType().Name}.{value}";
}
