using System.Text.RegularExpressions;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>What a spreadsheet leaves in a cell when it has lost the value.</summary>
internal static partial class SpreadsheetMarks
{
    /// <summary>A long number in short form, such as 4.42E+11.</summary>
    public static bool IsShortened(string text) => Shortened().IsMatch(text);

    /// <summary>An error such as #REF!, or a column too narrow to show its number.</summary>
    public static bool IsError(string text) => Error().IsMatch(text);

    [GeneratedRegex(@"^[0-9](?:[.,][0-9]+)?[eE]\+[0-9]+\z", RegexOptions.CultureInvariant)]
    private static partial Regex Shortened();

    [GeneratedRegex(@"^#(?:N/A|(?:REF|VALUE|NUM|NULL|SPILL|CALC)!|DIV/0!|NAME\?|##+)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Error();
}
