using System.Text.RegularExpressions;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Looks like an address. Whether anybody reads it, only a message can tell.</summary>
public static partial class EmailCell
{
    public static Reading<string> Read(string text) =>
        text.Length <= 254 && Address().IsMatch(text) ? text : new Sentence("one e-mail address, such as {0}", "name@example.org");

    [GeneratedRegex("""^[^\s@<>,;:"()]+@[^\s@<>,;:"()]+\.[^\s@<>,;:"().]+\z""", RegexOptions.CultureInvariant)]
    private static partial Regex Address();
}
