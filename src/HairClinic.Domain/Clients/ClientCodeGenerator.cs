namespace HairClinic.Domain.Clients;

/// <summary>
/// The code the program proposes for a new client, such as KX7-W4M: random, so that nobody who knows one can guess another,
/// and short enough for a label. A practice may type or import codes of its own instead.
/// </summary>
/// <remarks>
/// Letters and digits that are mistaken for one another in print or handwriting are left out, both of each pair: 0 O D Q,
/// 1 I L, 2 Z, 5 S, 6 G, 8 B, U V; and the other vowels, so that no code is a word. The first is always a letter, so that a
/// spreadsheet keeps a code as text. Common practice, no source.
/// </remarks>
public static class ClientCodeGenerator
{
    /// <summary>What may be first.</summary>
    public const string Letters = "CFHJKMNPRTWXY";

    /// <summary>What may follow.</summary>
    public const string Alphabet = "3479" + Letters;

    /// <summary>Signs, the dash not counted: 13 · 17⁵, about 18 million codes.</summary>
    public const int Length = 6;

    private const int Half = Length / 2;

    /// <param name="below">A whole number from 0 to one below the given, all equally likely and not to be foreseen.</param>
    public static string Draw(Func<int, int> below)
    {
        Span<char> code = stackalloc char[Length + 1];
        for (var i = 0; i < Length; i++)
        {
            var from = i == 0 ? Letters : Alphabet;
            code[i < Half ? i : i + 1] = from[below(from.Length)];
        }
        code[Half] = '-';
        return new string(code);
    }

    /// <summary>Whether it is written as a proposed one is.</summary>
    public static bool HasGeneratedFormat(string code) =>
        code.Length == Length + 1
        && code[Half] == '-'
        && Letters.Contains(code[0], StringComparison.Ordinal)
        && code.Remove(Half, 1).All(sign => Alphabet.Contains(sign, StringComparison.Ordinal));
}
