using System.Collections.Frozen;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>One column of a sheet. The name is our format and stays English; the meaning is shown to people and translated.</summary>
public sealed record SheetColumn(string Name, ColumnType Type, string Meaning, string Example)
{
    public bool Required { get; init; }

    /// <summary>Other headings under which practices keep the same thing.</summary>
    public IReadOnlyList<string> Synonyms { get; init; } = [];

    public IReadOnlyList<SheetChoice> Choices { get; init; } = [];

    /// <summary>Bounds of a number, both included.</summary>
    public decimal Least { get; init; }

    public decimal Most { get; init; } = 1_000_000_000m;
}

/// <summary>One value of a choice column: the word we write, and the words we also read.</summary>
public sealed record SheetChoice(string Name, params string[] Synonyms)
{
    private readonly FrozenSet<string> _words = Synonyms.Append(Name).Select(PlainWords.Normalize).ToFrozenSet();

    /// <param name="plainWord">A word as <see cref="PlainWords"/> leaves it.</param>
    internal bool Answers(string plainWord) => _words.Contains(plainWord);
}
