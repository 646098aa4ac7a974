using System.Text.RegularExpressions;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A code of the practice's own, on one line.</summary>
public static partial class CodeCell
{
    private const int Longest = 60;

    public static Reading<string> Read(string text)
    {
        if (SpreadsheetMarks.IsShortened(text))
            return new Sentence("the whole code; the spreadsheet has shortened it: format the column as text, then save again");
        return text.Length <= Longest && !Control().IsMatch(text)
            ? text
            : new Sentence("a code on one line, of at most {0} characters", Longest);
    }

    [GeneratedRegex(@"\p{Cc}", RegexOptions.CultureInvariant)]
    private static partial Regex Control();
}
