namespace HairClinic.Web.Keys;

/// <summary>
/// One client's own key, wrapped by a master key. What it sealed cannot be read by anyone once it is destroyed; the row
/// stays, so that the client is never given a second key by accident.
/// </summary>
public sealed class ClientKey : PracticeOwned
{
    private ClientKey() { }

    public ClientKey(Guid id, Guid clientId, byte[] wrapped, string masterKeyId, Instant now) =>
        (Id, ClientId, Wrapped, MasterKeyId, CreatedAt) = (id, clientId, wrapped, masterKeyId, now);

    public Guid ClientId { get; private set; }

    /// <summary>Empty once destroyed.</summary>
    public byte[] Wrapped { get; private set; } = [];

    public string MasterKeyId { get; private set; } = "";
    public Instant CreatedAt { get; private set; }
    public Instant? DestroyedAt { get; private set; }

    public void ReplaceWrapped(byte[] wrapped, string masterKeyId) => (Wrapped, MasterKeyId) = (wrapped, masterKeyId);
}
