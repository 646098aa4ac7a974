namespace HairClinic.Domain.Privacy;

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
