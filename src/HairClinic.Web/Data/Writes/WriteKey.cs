namespace HairClinic.Web.Data.Writes;

/// <summary>A submission that was carried out, with its first answer, so that sending it again changes nothing.</summary>
public sealed class WriteKey : ActorOwned
{
    private WriteKey() { }

    public WriteKey(Guid id, string deed, byte[] bodyHash, string answer, Instant at) =>
        (Id, Deed, BodyHash, Answer, At) = (id, deed, bodyHash, answer, at);

    public string Deed { get; private set; } = "";
    public byte[] BodyHash { get; private set; } = [];

    /// <summary>The outcome as JSON.</summary>
    public string Answer { get; private set; } = "{}";

    public Instant At { get; private set; }
}
