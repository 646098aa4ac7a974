using OtpNet;

namespace HairClinic.Web.Accounts;

/// <summary>Codes of a codes app, by RFC 6238 with what such apps expect: SHA-1, 30 seconds, six digits.</summary>
public static class AppCodes
{
    /// <summary>RFC 4226 asks for at least 128 bits and advises 160.</summary>
    private const int SecretBytes = 20;

    // A phone's clock may be one step off either way.
    private static readonly VerificationWindow OneStep = new(previous: 1, future: 1);

    public static string NewSecret() => Base32Encoding.ToString(RandomNumberGenerator.GetBytes(SecretBytes));

    /// <returns>The step the code belongs to, because it opens once only (RFC 6238, 5.2); null when it is none of those that count now.</returns>
    public static long? Match(string secret, string code, Instant now) =>
        new Totp(Base32Encoding.ToBytes(secret)).VerifyTotp(
            now.ToDateTimeUtc(),
            string.Concat(code.Where(char.IsAsciiDigit)),
            out var step,
            OneStep
        )
            ? step
            : null;
}
