namespace HairClinic.Web.Data.Work;

/// <summary>A message to a client or a person. Discreet: nothing in it says what a visit is for.</summary>
public sealed record Letter(string To, string Subject, string Text)
{
    /// <summary>The client it is to, who may want no letters; null for what they asked for themselves, and for staff.</summary>
    public Guid? ClientId { get; init; }

    public LetterKind Kind { get; init; }

    /// <summary>The client whose letter it is, whether they want letters or not; null for staff.</summary>
    public Guid? For { get; init; }

    /// <summary>From then on it is useless: what it opens has expired.</summary>
    public Instant? Until { get; init; }

    /// <summary>What may be kept once it is over: neither the address nor a word of it.</summary>
    public Letter Redact() => new("", "", "") { Kind = Kind, For = For ?? ClientId };
}

/// <summary>What a letter is about, for the list of those that did not go.</summary>
public enum LetterKind
{
    Other,
    SignInLink,
    Invitation,
    ConfirmAddress,
    AddressEnded,
    SignInChanged,
}
