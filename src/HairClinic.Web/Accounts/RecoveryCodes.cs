using OtpNet;

namespace HairClinic.Web.Accounts;

/// <summary>Codes for the day the phone is lost: written down once, each opens once.</summary>
public static class RecoveryCodes
{
    public const int Many = 10;

    /// <summary>80 random bits each, in four groups that are easy to write down.</summary>
    public static IReadOnlyList<string> New() =>
        [.. Enumerable.Range(0, Many).Select(_ => Grouped(Base32Encoding.ToString(RandomNumberGenerator.GetBytes(10)).ToLowerInvariant()))];

    /// <summary>Whether it has the length of one, so that nothing slow is done for what cannot be.</summary>
    public static bool HasCodeLength(string typed) => Normalize(typed).Length == 16;

    /// <summary>As it is compared: neither spaces, hyphens nor capitals matter.</summary>
    public static string Normalize(string code) => string.Concat(code.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private static string Grouped(string letters) => string.Join('-', letters.Chunk(4).Select(c => new string(c)));
}
