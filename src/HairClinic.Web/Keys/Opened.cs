namespace HairClinic.Web.Keys;

/// <summary>What came of opening sealed bytes. Null bytes: the client's key was destroyed, and nobody can read them any more.</summary>
public sealed record Opened(byte[]? Bytes)
{
    public static readonly Opened KeyDestroyed = new((byte[]?)null);

    public bool Destroyed => Bytes is null;
}
