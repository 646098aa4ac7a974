namespace HairClinic.Web.Keys;

/// <summary>
/// AES-256-GCM (NIST SP 800-38D) with a random 96-bit nonce: one format byte, the nonce, the tag, the ciphertext.
/// </summary>
/// <remarks>
/// With random nonces a key may seal 2^32 times before a repeat becomes likelier than 2^-32 (SP 800-38D, 8.3). A client's
/// key seals one thing a save, a master key one key a client and rotation: both stay far below.
/// </remarks>
public static class AesGcmCipher
{
    public const byte Format = 1;

    private const int NonceSize = 12;
    private const int TagSize = 16;
    private const int Overhead = 1 + NonceSize + TagSize;

    /// <param name="bound">What the bytes belong to; they open only where it is the same.</param>
    public static byte[] Seal(ReadOnlySpan<byte> key, ReadOnlySpan<byte> bound, ReadOnlySpan<byte> plain)
    {
        var closed = new byte[Overhead + plain.Length];
        closed[0] = Format;
        var nonce = closed.AsSpan(1, NonceSize);
        RandomNumberGenerator.Fill(nonce);
        Encrypt(key, nonce, bound, plain, closed.AsSpan(Overhead), closed.AsSpan(1 + NonceSize, TagSize));
        return closed;
    }

    /// <exception cref="CryptographicException">They were changed, moved, sealed under another key, or are no sealed bytes.</exception>
    public static byte[] Unseal(ReadOnlySpan<byte> key, ReadOnlySpan<byte> bound, ReadOnlySpan<byte> closed)
    {
        if (closed.Length < Overhead || closed[0] != Format)
            throw new CryptographicException("These are no sealed bytes of a known format.");
        var plain = new byte[closed.Length - Overhead];
        using var aes = new AesGcm(key, TagSize);
        aes.Decrypt(closed.Slice(1, NonceSize), closed[Overhead..], closed.Slice(1 + NonceSize, TagSize), plain, bound);
        return plain;
    }

    public static void Encrypt(
        ReadOnlySpan<byte> key,
        ReadOnlySpan<byte> nonce,
        ReadOnlySpan<byte> bound,
        ReadOnlySpan<byte> plain,
        Span<byte> cipher,
        Span<byte> tag
    )
    {
        using var aes = new AesGcm(key, TagSize);
        aes.Encrypt(nonce, plain, cipher, tag, bound);
    }
}
