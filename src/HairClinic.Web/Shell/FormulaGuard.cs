namespace HairClinic.Web.Shell;

/// <summary>Keeps a spreadsheet from running as a formula what somebody once typed into a note.</summary>
/// <remarks>
/// A cell is made text by a leading apostrophe when a formula sign (also in its full-width form) comes first, be it
/// after white space or quotes, or when it begins with a tab or line break. The same holds after a separator or line
/// break inside the cell: a spreadsheet set to another separator would start a new cell there.
/// </remarks>
public static partial class FormulaGuard
{
    public static string Neutralise(string cell) => Dangerous().Replace(cell, "$1'$2");

    [GeneratedRegex("""(^|[,;\t\r\n])([\s"]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|(?<=^)[\t\r\n])""", RegexOptions.CultureInvariant)]
    private static partial Regex Dangerous();
}
