using System.Globalization;
using System.Text;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Words as people mean them: no case, no accents, no punctuation, nothing in brackets. "Teléfono (móvil)" is "telefono".</summary>
public static class PlainWords
{
    public static string Normalize(string text)
    {
        var plain = new StringBuilder(text.Length);
        var brackets = 0;
        foreach (var rune in Decomposed(text).EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '(' or '[':
                    brackets++;
                    break;
                case ')' or ']':
                    brackets = Math.Max(0, brackets - 1);
                    break;
                default:
                    Append(plain, rune, brackets > 0);
                    break;
            }
        }
        return plain.ToString().TrimEnd();
    }

    private static void Append(StringBuilder plain, Rune rune, bool inBrackets)
    {
        if (inBrackets || Rune.GetUnicodeCategory(rune) == UnicodeCategory.NonSpacingMark || rune.Value == '\'')
            return;
        if (Rune.IsLetterOrDigit(rune))
            plain.Append(Rune.ToLowerInvariant(rune));
        else if (plain.Length > 0 && plain[^1] != ' ')
            plain.Append(' ');
    }

    // Normalize refuses half surrogates and U+FFFE, which a broken file may well contain.
    private static string Decomposed(string text)
    {
        var sound = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            sound.Append(rune.Value == 0xFFFE ? Rune.ReplacementChar : rune);
        return sound.ToString().Normalize(NormalizationForm.FormD);
    }
}
