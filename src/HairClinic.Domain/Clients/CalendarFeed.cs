namespace HairClinic.Domain.Clients;

/// <summary>A secret address from which a client's calendar fetches their dates. Only the hash of its secret is kept.</summary>
public sealed class CalendarFeed : PracticeOwned
{
    private CalendarFeed() { }

    public CalendarFeed(Guid id, Guid clientId, string email, byte[] secretHash, Instant madeAt)
    {
        Id = id;
        ClientId = clientId;
        Email = email.Trim().ToLowerInvariant();
        SecretHash = secretHash;
        MadeAt = madeAt;
    }

    public Guid ClientId { get; private set; }

    /// <summary>Of the sign-in that made it, in lower case: the feed lives as long as this address opens the client's page.</summary>
    public string Email { get; private set; } = "";

    public byte[] SecretHash { get; private set; } = [];
    public Instant MadeAt { get; private set; }
    public Instant? EndedAt { get; private set; }

    public void End(Instant now) => EndedAt ??= now;
}
