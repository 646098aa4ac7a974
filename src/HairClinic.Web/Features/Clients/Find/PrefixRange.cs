using System.Globalization;
using System.Text;

namespace HairClinic.Web.Features.Clients;

/// <summary>All words that begin with a prefix, as plain bounds: row security lets an index serve these, and not a pattern.</summary>
/// <param name="From">The prefix itself, the least of them.</param>
/// <param name="Below">The least word, by code point, that is greater than all of them.</param>
public readonly record struct PrefixRange(string From, string Below)
{
    /// <param name="prefix">At least one letter or digit, normalised.</param>
    public static PrefixRange Of(string prefix)
    {
        var runes = prefix.EnumerateRunes().ToArray();
        var last = runes[^1].Value + 1;
        // Surrogates are no characters of their own.
        runes[^1] = new Rune(last == 0xD800 ? 0xE000 : last);
        return new(prefix, string.Concat(runes.Select(rune => rune.ToString())));
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"[{From}, {Below})");
}
