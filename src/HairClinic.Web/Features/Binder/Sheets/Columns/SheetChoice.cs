using System.Collections.Frozen;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>One value of a choice column: the word we write, and the words we also read.</summary>
public sealed record SheetChoice(string Name, params string[] Synonyms)
{
    private readonly FrozenSet<string> _words = Synonyms.Append(Name).Select(PlainWords.Of).ToFrozenSet();

    /// <param name="plainWord">A word as <see cref="PlainWords"/> leaves it.</param>
    internal bool Answers(string plainWord) => _words.Contains(plainWord);
}
