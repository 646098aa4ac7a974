namespace HairClinic.Domain.Clients;

/// <summary>Dates in a client's life that the schedule respects: a rebond is pulled ahead of them, and nothing falls due while away.</summary>
public sealed class LifeEvent : PracticeOwned
{
    private LifeEvent() { }

    /// <param name="away">Whether the client cannot come on these days.</param>
    /// <exception cref="Refusal">The event ends before it starts.</exception>
    public LifeEvent(Guid id, Guid clientId, LifeEventKind kind, LocalDate from, LocalDate to, bool away)
    {
        if (to < from)
            throw new Refusal("The event ends before it starts.");
        Id = id;
        ClientId = clientId;
        Kind = kind;
        From = from;
        To = to;
        Away = away;
    }

    public Guid ClientId { get; private set; }
    public LifeEventKind Kind { get; private set; }
    public LocalDate From { get; private set; }

    /// <summary>Last day of it, included.</summary>
    public LocalDate To { get; private set; }

    public bool Away { get; private set; }
}

public enum LifeEventKind
{
    Celebration,
    Travel,
    Surgery,
    Other,
}
