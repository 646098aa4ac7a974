namespace HairClinic.Web.Data.Writes;

/// <summary>A submission that was carried out, with its first answer, so that sending it again changes nothing.</summary>
public sealed class WriteKey : ActorOwned
{
    private WriteKey() { }

    public WriteKey(Guid id, string writeName, byte[] bodyHash, string answer, Instant at) =>
        (Id, WriteName, BodyHash, Answer, At) = (id, writeName, bodyHash, answer, at);

    public string WriteName { get; private set; } = "";
    public byte[] BodyHash { get; private set; } = [];

    /// <summary>The outcome as JSON.</summary>
    public string Answer { get; private set; } = "{}";

    public Instant At { get; private set; }
}
