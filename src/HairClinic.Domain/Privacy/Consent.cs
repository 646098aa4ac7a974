namespace HairClinic.Domain.Privacy;

/// <summary>A client said yes, or took it back. Rows are only ever added; what stands is <see cref="ConsentValidityRule"/>'s to say.</summary>
public sealed class Consent : PracticeOwned
{
    private Consent() { }

    /// <param name="takenBy">The person who asked; null where the client did it on their own page.</param>
    public Consent(Guid id, Guid clientId, ConsentSubject subject, bool given, Guid textId, Instant at, Guid? takenBy, ConsentWay way)
    {
        Id = id;
        ClientId = clientId;
        Subject = subject;
        Given = given;
        TextId = textId;
        At = at;
        TakenBy = takenBy;
        Way = way;
    }

    public Guid ClientId { get; private set; }
    public ConsentSubject Subject { get; private set; }

    /// <summary>False: taken back.</summary>
    public bool Given { get; private set; }

    /// <summary>The text the client was shown.</summary>
    public Guid TextId { get; private set; }

    public Instant At { get; private set; }
    public Guid? TakenBy { get; private set; }
    public ConsentWay Way { get; private set; }
}

/// <summary>What a client agrees to, each by itself: agreeing to one says nothing about another.</summary>
public enum ConsentSubject
{
    Treatment,
    PatchTest,
    Photos,

    /// <summary>Photos shown to people in training, with the face covered.</summary>
    TeachingPhotos,
    Messages,
    InsurerPapers,

    /// <summary>A unit of theirs that they need no more is trained with.</summary>
    Training,
}

/// <summary>How a consent was given or taken back.</summary>
public enum ConsentWay
{
    OnPaper,
    OnTablet,
    OnOwnPage,
}

/// <summary>Which consents are asked.</summary>
public static class ConsentSubjectExtensions
{
    /// <summary>Consent to messages is not asked for, because the program sends no reminders. One given earlier still stands and can be withdrawn.</summary>
    public static bool IsAsked(this ConsentSubject subject) => subject != ConsentSubject.Messages;
}

/// <summary>Which of a client's consents are in force at a moment.</summary>
/// <remarks>
/// The latest entry on a subject decides. Of two at the same instant a withdrawal wins: in doubt nothing is agreed.
/// Silence is not consent.
/// </remarks>
public static class ConsentValidityRule
{
    /// <returns>The row that says yes, or null: never asked, or taken back.</returns>
    public static Consent? FindConsent(IEnumerable<Consent> ledger, ConsentSubject subject, Instant at) =>
        Last(ledger, subject, at) is { Given: true } last ? last : null;

    /// <returns>The latest entry, given or withdrawn; null if never asked.</returns>
    public static Consent? Last(IEnumerable<Consent> ledger, ConsentSubject subject, Instant at) =>
        ledger.Where(c => c.Subject == subject && c.At <= at).OrderByDescending(c => c.At).ThenBy(c => c.Given).FirstOrDefault();
}
