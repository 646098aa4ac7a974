namespace HairClinic.Web.Keys;

/// <summary>The result of opening sealed bytes. Null bytes: the client's key was destroyed and they are unreadable for good.</summary>
public sealed record UnsealResult(byte[]? Bytes)
{
    public static readonly UnsealResult KeyDestroyed = new((byte[]?)null);

    public bool Destroyed => Bytes is null;
}
