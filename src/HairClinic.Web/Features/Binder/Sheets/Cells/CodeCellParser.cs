namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A code of the practice's own, on one line.</summary>
public static partial class CodeCellParser
{
    private const int Longest = 60;

    public static CellParseResult<string> Parse(string text)
    {
        if (SpreadsheetArtifacts.IsScientificNotation(text))
            return new Sentence("the whole code; the spreadsheet has shortened it: format the column as text, then save again");
        return text.Length <= Longest && !Control().IsMatch(text)
            ? text
            : new Sentence("a code on one line, of at most {0} characters", Longest);
    }

    [GeneratedRegex(@"\p{Cc}", RegexOptions.CultureInvariant)]
    private static partial Regex Control();
}
