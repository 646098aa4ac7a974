using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Codes of a codes app, by RFC 6238 with what such apps expect: SHA-1, 30 seconds, six digits. Kept here because a code must open once
/// only (RFC 6238, 5.2), and for that one has to know which step it belongs to.
/// </summary>
public static class Totp
{
    public const int StepSeconds = 30;

    /// <summary>RFC 4226 asks for at least 128 bits and advises 160.</summary>
    private const int SecretBytes = 20;

    private const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    public static string NewSecret() => Base32(RandomNumberGenerator.GetBytes(SecretBytes));

    public static long StepAt(Instant instant) => Math.DivRem(instant.ToUnixTimeSeconds(), StepSeconds).Quotient;

    public static string Code(byte[] secret, long step, int digits = 6)
    {
        Span<byte> counter = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(counter, step);
        // SHA-1 is what the standard and the apps use here; its collisions do not touch HMAC.
#pragma warning disable CA5350
        var hash = HMACSHA1.HashData(secret, counter);
#pragma warning restore CA5350
        var number = BinaryPrimitives.ReadInt32BigEndian(hash.AsSpan(hash[^1] & 0xf, 4)) & int.MaxValue;
        return (number % (int)Math.Pow(10, digits)).ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
    }

    /// <summary>A phone's clock may be one step off either way.</summary>
    /// <returns>The step the code belongs to; null when it is none of those that count now.</returns>
    public static long? Match(string base32Secret, string code, Instant now)
    {
        var secret = FromBase32(base32Secret);
        var typed = Encoding.ASCII.GetBytes(string.Concat(code.Where(char.IsAsciiDigit)));
        long? found = null;
        for (var step = StepAt(now) - 1; step <= StepAt(now) + 1; step++)
        {
            if (CryptographicOperations.FixedTimeEquals(typed, Encoding.ASCII.GetBytes(Code(secret, step))))
                found = step;
        }
        return found;
    }

    public static string Base32(ReadOnlySpan<byte> bytes)
    {
        var text = new StringBuilder();
        int buffer = 0,
            bits = 0;
        foreach (var octet in bytes)
        {
            buffer = (buffer << 8 | octet) & 0xffff;
            for (bits += 8; bits >= 5; bits -= 5)
                text.Append(Alphabet[buffer >> (bits - 5) & 31]);
        }
        if (bits > 0)
            text.Append(Alphabet[buffer << (5 - bits) & 31]);
        return text.ToString();
    }

    public static byte[] FromBase32(string text)
    {
        var bytes = new List<byte>();
        int buffer = 0,
            bits = 0;
        foreach (var letter in text.TrimEnd('='))
        {
            buffer = (buffer << 5 | Alphabet.IndexOf(letter, StringComparison.Ordinal)) & 0xffff;
            bits += 5;
            if (bits < 8)
                continue;
            bits -= 8;
            bytes.Add((byte)(buffer >> bits));
        }
        return [.. bytes];
    }
}
