namespace HairClinic.Web.Data;

/// <summary>
/// A word by which something is found from every screen: part of a name, a code, a serial, or a phone
/// number written backwards so that its end can be typed. Normalised, and read by prefix.
/// </summary>
public sealed class FindWord : PracticeOwned
{
    private FindWord() { }

    public FindWord(Guid id, FindWordKind kind, Guid subjectId, string word)
    {
        Id = id;
        Kind = kind;
        SubjectId = subjectId;
        Word = word;
    }

    public FindWordKind Kind { get; private set; }

    /// <summary>The client or unit it leads to.</summary>
    public Guid SubjectId { get; private set; }

    public string Word { get; private set; } = "";
}
