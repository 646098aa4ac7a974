namespace HairClinic.Web.Data.Rows;

/// <summary>
/// One device a client, or who looks after them, signed in on. It proves an e-mail address; whose page that address may
/// open is asked each time, so that an ended guardianship, a changed address or a departure shows at once.
/// </summary>
public sealed class ClientSignIn : PracticeOwned
{
    private ClientSignIn() { }

    public ClientSignIn(Guid id, Guid clientId, string email, Instant openedAt, bool invitation = false)
    {
        Id = id;
        ClientId = clientId;
        Email = email.Trim().ToLowerInvariant();
        OpenedAt = openedAt;
        Invitation = invitation;
    }

    /// <summary>Whose page it shows.</summary>
    public Guid ClientId { get; private set; }

    /// <summary>In lower case.</summary>
    public string Email { get; private set; } = "";

    public Instant OpenedAt { get; private set; }

    /// <summary>Opened by an invitation: dates only, whatever the address opens.</summary>
    public bool Invitation { get; private set; }

    public Instant? EndedAt { get; private set; }

    public void SwitchClient(Guid clientId) => ClientId = clientId;

    public void End(Instant now) => EndedAt ??= now;
}
