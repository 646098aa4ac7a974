namespace HairClinic.Domain.Clients;

/// <summary>A client comes to a salon that has no access to their record: it asks the home salon for access.</summary>
public sealed class ClientRequest : PracticeOwned
{
    private ClientRequest() { }

    public ClientRequest(Guid id, Guid clientId, Guid salonId, Guid askedBy, Instant at, string because)
    {
        Id = id;
        ClientId = clientId;
        SalonId = salonId;
        AskedBy = askedBy;
        AskedAt = at;
        Because = because.Trim();
    }

    public Guid ClientId { get; private set; }

    /// <summary>The salon that asks.</summary>
    public Guid SalonId { get; private set; }

    public Guid AskedBy { get; private set; }
    public Instant AskedAt { get; private set; }
    public string Because { get; private set; } = "";
    public Instant? AnsweredAt { get; private set; }
    public bool? Granted { get; private set; }

    /// <exception cref="Refusal">Somebody answered already.</exception>
    public void AnswerAccessRequest(bool granted, Instant now)
    {
        if (AnsweredAt is not null)
            throw new Refusal("Somebody has answered this already.");
        (AnsweredAt, Granted) = (now, granted);
    }
}
