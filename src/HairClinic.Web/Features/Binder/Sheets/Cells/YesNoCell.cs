namespace HairClinic.Web.Features.Binder.Sheets;

public static class YesNoCell
{
    private static readonly string[] Yes = ["yes", "y", "true", "1", "x", "si", "s", "verdadero"];
    private static readonly string[] No = ["no", "n", "false", "0", "falso"];

    public static Reading<bool> Read(string text)
    {
        var word = PlainWords.Normalize(text);
        if (Yes.Contains(word))
        {
            return true;
        }
        return No.Contains(word) ? false : new Sentence("yes or no");
    }
}
