namespace HairClinic.Web.Keys;

/// <summary>
/// That something in this database was sealed under a master key. Unfenced: it is read before anybody is known, so that the
/// program never starts with another key file than the one its data need.
/// </summary>
public sealed class MasterKeyMark
{
    private MasterKeyMark() { }

    public MasterKeyMark(MasterKey key)
    {
        Id = key.Id;
        MadeAt = key.Made;
        Mark = key.Fingerprint();
    }

    public string Id { get; private set; } = "";
    public Instant MadeAt { get; private set; }
    public byte[] Mark { get; private set; } = [];
}
