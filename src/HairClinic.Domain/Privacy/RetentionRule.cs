namespace HairClinic.Domain.Privacy;

/// <summary>
/// How long something is kept. The numbers a practice starts with are common practice, no source: local law comes first, and
/// in many places it asks for longer with what bears on money or health.
/// </summary>
public sealed class RetentionRule : PracticeOwned
{
    private RetentionRule() { }

    public RetentionRule(Guid id, RetentionSubject subject)
    {
        Id = id;
        Subject = subject;
        (KeepDays, ByItself) = DefaultsForSubject(subject);
    }

    public RetentionSubject Subject { get; private set; }
    public int KeepDays { get; private set; }

    /// <summary>Applied each night; else only when somebody confirms what it would do.</summary>
    public bool ByItself { get; private set; }

    public Instant? LastAppliedAt { get; private set; }

    /// <exception cref="Refusal">Shorter than is safe, longer than ninety years, or people to be erased unasked.</exception>
    public void Edit(int keepDays, bool byItself)
    {
        if (keepDays < LeastDays(Subject) || keepDays > 33_000)
            throw new Refusal("Between {0} and {1} days.", LeastDays(Subject), 33_000);
        if (byItself && Subject == RetentionSubject.ClientsWhoLeft)
            throw new Refusal("Nobody is erased unasked: look at the list and confirm it.");
        KeepDays = keepDays;
        ByItself = byItself;
    }

    public void MarkApplied(Instant now) => LastAppliedAt = now;

    /// <summary>A write is sent again after a lost answer for up to a day: its key has to live longer than that.</summary>
    public static int LeastDays(RetentionSubject subject) =>
        subject switch
        {
            RetentionSubject.WriteKeys => 2,
            RetentionSubject.ClientsWhoLeft => 30,
            _ => 1,
        };

    /// <summary>Common practice, no source; from memory.</summary>
    public static (int KeepDays, bool ByItself) DefaultsForSubject(RetentionSubject subject) =>
        subject switch
        {
            RetentionSubject.ClientsWhoLeft => (6 * 365, false),
            RetentionSubject.ContactNotes => (2 * 365, false),
            RetentionSubject.Drafts => (60, true),
            RetentionSubject.SignInLinks => (7, true),
            RetentionSubject.WriteKeys => (7, true),
            RetentionSubject.DoneWork => (30, true),
            _ => throw new ArgumentOutOfRangeException(nameof(subject)),
        };
}

/// <summary>What a rule says how long to keep.</summary>
public enum RetentionSubject
{
    /// <summary>Counted from the day they left; the record is erased, not deleted.</summary>
    ClientsWhoLeft,
    ContactNotes,
    Drafts,

    /// <summary>Used or run out.</summary>
    SignInLinks,
    WriteKeys,
    DoneWork,
}
