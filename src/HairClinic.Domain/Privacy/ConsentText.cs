namespace HairClinic.Domain.Privacy;

/// <summary>The words shown when a client is asked. A row is never changed: new words are a new number, and what was agreed before stays agreed to the old ones.</summary>
public sealed class ConsentText : PracticeOwned
{
    private ConsentText() { }

    /// <param name="language">A culture name such as en-GB.</param>
    /// <param name="by">Null for the words the program brings.</param>
    /// <exception cref="Refusal">No words, or more than 4,000 characters.</exception>
    public ConsentText(Guid id, ConsentSubject subject, string language, int number, string words, Instant at, Guid? by)
    {
        var trimmed = words.Trim();
        if (trimmed.Length is 0 or > 4000)
            throw new Refusal("Say in 1 to 4,000 characters what the client agrees to.");
        Id = id;
        Subject = subject;
        Language = language;
        Number = number;
        Words = trimmed;
        At = at;
        By = by;
    }

    public ConsentSubject Subject { get; private set; }
    public string Language { get; private set; } = "";

    /// <summary>1, 2, 3 … for the subject and language.</summary>
    public int Number { get; private set; }

    public string Words { get; private set; } = "";
    public Instant At { get; private set; }
    public Guid? By { get; private set; }
}
