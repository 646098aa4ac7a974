using HairClinic.Web.Data;
using HairClinic.Web.Data.Phones;

namespace HairClinic.Web.Features.Clients;

/// <summary>What somebody typed or scanned, read every way it can be meant.</summary>
/// <param name="Words">Each must be met by something of the client's: a name, the code, a unit's serial, the end of the phone.</param>
/// <param name="Whole">All of it as one code or serial, such as “C-7” or “C-7-1”; empty if nothing was typed.</param>
/// <param name="PhoneEnd">All of it as the end of a phone number, written from the end; null if it cannot be one.</param>
public sealed record SearchTerms(IReadOnlyList<string> Words, string Whole, string? PhoneEnd)
{
    private const int ShortestPhoneEnd = 3;
    private const int ShortestWholePhone = 7;
    private const int MostWords = 6;
    private const int Longest = 100;

    public bool IsEmpty => Whole.Length == 0;

    /// <summary>As it was typed.</summary>
    public string Text { get; private init; } = "";

    /// <summary>All of it as a whole number of the salon's own country, written from the end; null where the end already says it, or it is none.</summary>
    public string? WholePhone { get; private init; }

    /// <summary>Long enough that the salon's country is worth asking for.</summary>
    public bool MayBeWholePhone => PhoneEnd is { Length: >= ShortestWholePhone };

    /// <summary>Prefixes and trunk zeros are read as the country has them: “011 44 20 …” from the United States, “+44 (0)20 …” anywhere.</summary>
    public SearchTerms WithWholePhone(PhoneNumberParser numbering) =>
        numbering.Parse(Text, out var written) == PhoneFault.None
        && FindWordIndexer.ReverseDigits(written) is var whole
        && !whole.StartsWith(PhoneEnd!, StringComparison.Ordinal)
            ? this with
            {
                WholePhone = whole,
            }
            : this;

    public static SearchTerms Parse(string? typed)
    {
        var text = (typed ?? "").Trim();
        text = text.Length > Longest ? text[..Longest] : text;
        return new(
            [.. FindWordIndexer.Words(text).Distinct().Take(MostWords)],
            FindWordIndexer.Normalize(text),
            ParseReversedPhoneEnd(text)
        )
        {
            Text = text,
        };
    }

    /// <summary>National numbers begin with a zero that the stored, international form does not have.</summary>
    public static string? ParseReversedPhoneEnd(string text)
    {
        if (text.Any(c => !char.IsAsciiDigit(c) && !" +-()./".Contains(c, StringComparison.Ordinal)))
            return null;
        var digits = FindWordIndexer.ReverseDigits(text);
        // Only a number typed from its start has its trunk zero; the end of one may well begin with a zero.
        var whole = digits.Length > 8 ? digits.TrimEnd('0') : digits;
        return whole.Length < ShortestPhoneEnd ? null : whole;
    }
}
