using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace HairClinic.Web.Keys;

/// <summary>A 256-bit key that lies outside the database. It wraps other keys; it never seals content itself.</summary>
/// <param name="Id">Stands beside everything it wrapped.</param>
public sealed record MasterKey(string Id, Instant Made, byte[] Bytes)
{
    /// <summary>Bytes in a key: AES-256 and HMAC-SHA256.</summary>
    public const int Size = 32;

    public static MasterKey Make(Instant now) =>
        new(RandomNumberGenerator.GetHexString(16, lowercase: true), now, RandomNumberGenerator.GetBytes(Size));

    /// <summary>A key for one purpose (HKDF-SHA256, RFC 5869), so that no key ever does two things.</summary>
    public byte[] For(string purpose) =>
        HKDF.DeriveKey(HashAlgorithmName.SHA256, Bytes, Size, salt: [], Encoding.UTF8.GetBytes("hairclinic " + purpose));

    /// <summary>What the database keeps of it, to know it again without knowing it.</summary>
    public byte[] Mark()
    {
        var key = For("mark");
        var mark = HMACSHA256.HashData(key, Encoding.UTF8.GetBytes(Id));
        CryptographicOperations.ZeroMemory(key);
        return mark;
    }

    /// <summary>Never the key.</summary>
    public override string ToString() => $"master key {Id}";
}
