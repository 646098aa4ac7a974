namespace HairClinic.Web.Data.Rows;

/// <summary>A single-use link a client signs in with. Only the hash of its token is kept.</summary>
public sealed class SignInLink
{
    private SignInLink() { }

    public SignInLink(byte[] tokenHash, Guid practiceId, Guid clientId, string email, Instant expiresAt, bool invitation = false)
    {
        TokenHash = tokenHash;
        PracticeId = practiceId;
        ClientId = clientId;
        Email = email;
        ExpiresAt = expiresAt;
        Invitation = invitation;
    }

    public byte[] TokenHash { get; private set; } = [];
    public Guid PracticeId { get; private set; }
    public Guid ClientId { get; private set; }

    /// <summary>Where it was sent: opening it proves access to that address.</summary>
    public string Email { get; private set; } = "";

    public Instant ExpiresAt { get; private set; }

    /// <summary>An invitation from the salon: valid for days, and opens dates only.</summary>
    public bool Invitation { get; private set; }

    public Instant? UsedAt { get; private set; }

    public void UseUp(Instant now) => UsedAt ??= now;
}
