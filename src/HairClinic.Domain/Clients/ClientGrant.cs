namespace HairClinic.Domain.Clients;

/// <summary>
/// Who may open a client's record, and until when: one salon's people, or one trainee. The rows for the home salon
/// and for visits are kept by the database itself; people write only those the home salon grants.
/// </summary>
public sealed class ClientGrant : PracticeOwned
{
    private ClientGrant() { }

    /// <summary>Granted by the home salon, from now on.</summary>
    /// <exception cref="Refusal">It would end before it begins, or says no reason.</exception>
    public ClientGrant(Guid id, Guid clientId, Guid salonId, Instant from, Instant until, Guid by, string because)
    {
        if (until <= from)
            throw new Refusal("The last day lies before today.");
        if (string.IsNullOrWhiteSpace(because))
            throw new Refusal("Say why the other salon needs to see this client.");
        Id = id;
        ClientId = clientId;
        SalonId = salonId;
        Reason = GrantReason.Granted;
        StartsAt = from;
        EndsAt = until;
        GivenBy = by;
        Note = because.Trim();
    }

    public Guid ClientId { get; private set; }

    /// <summary>Null where it is one trainee's.</summary>
    public Guid? SalonId { get; private set; }

    /// <summary>The trainee whose visit it is; null where it is a whole salon's.</summary>
    public Guid? PersonId { get; private set; }

    public GrantReason Reason { get; private set; }
    public Instant StartsAt { get; private set; }

    /// <summary>The first moment it no longer holds; null for the home salon.</summary>
    public Instant? EndsAt { get; private set; }

    public Guid? GivenBy { get; private set; }
    public string? Note { get; private set; }

    /// <exception cref="Refusal">Only what was granted can be taken back: a home salon moves by transfer, a visit by calling it off.</exception>
    public void TakeBack(Instant now)
    {
        if (Reason != GrantReason.Granted)
            throw new Refusal("This one cannot be taken back: it belongs to a visit or to the home salon.");
        if (EndsAt is null || EndsAt > now)
            EndsAt = Instant.Max(now, StartsAt);
    }
}

/// <summary>Why a salon (or a trainee) may open a client's record.</summary>
public enum GrantReason
{
    /// <summary>It is the client's home salon; without end.</summary>
    Home,

    /// <summary>A visit is or was booked there; kept by the database.</summary>
    Visit,

    /// <summary>The home salon allowed it, by name and date.</summary>
    Granted,
}
