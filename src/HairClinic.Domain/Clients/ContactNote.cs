namespace HairClinic.Domain.Clients;

/// <summary>What the desk did about someone on the due list.</summary>
public sealed class ContactNote : PracticeOwned
{
    private ContactNote() { }

    /// <exception cref="Refusal">Put off without a day or a reason.</exception>
    public ContactNote(Guid id, Guid clientId, ContactOutcome kind, Instant at, Guid by, LocalDate? until, string? reason)
    {
        if (kind == ContactOutcome.PutOff && (until is null || string.IsNullOrWhiteSpace(reason)))
            throw new Refusal("Say until when, and why.");
        Id = id;
        ClientId = clientId;
        Kind = kind;
        At = at;
        By = by;
        Until = until;
        Reason = reason?.Trim();
    }

    public Guid ClientId { get; private set; }
    public ContactOutcome Kind { get; private set; }
    public Instant At { get; private set; }
    public Guid By { get; private set; }

    /// <summary>For a put-off: the day it comes back to the list.</summary>
    public LocalDate? Until { get; private set; }

    public string? Reason { get; private set; }
}

public enum ContactOutcome
{
    Rang,
    RangNoAnswer,
    Messaged,
    SlotOffered,
    PutOff,
}
