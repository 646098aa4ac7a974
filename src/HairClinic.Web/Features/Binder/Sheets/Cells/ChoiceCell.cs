namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>One of a column's choices, by our word for it or by another that means the same. Answers with our word.</summary>
public static class ChoiceCell
{
    public static Reading<string> Read(string text, IReadOnlyList<SheetChoice> choices)
    {
        var word = PlainWords.Normalize(text);
        var chosen = choices.FirstOrDefault(choice => choice.Answers(word));
        return chosen is null ? new Sentence("one of: {0}", string.Join(", ", choices.Select(choice => choice.Name))) : chosen.Name;
    }
}
