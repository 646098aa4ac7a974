using Microsoft.AspNetCore.WebUtilities;

namespace HairClinic.Web.Features.Settings;

/// <summary>
/// The code that lets the first owner in: whoever sees the console of a fresh installation sets it up, nobody
/// else. It lives in memory, so a restart prints another.
/// </summary>
public sealed class SetupCode
{
    private volatile string _code = Make();

    /// <summary>Two first owners at the same moment queue here.</summary>
    public SemaphoreSlim OneAtATime { get; } = new(1, 1);

    public string Value => _code;

    public bool Opens(string? offered) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(offered?.Trim() ?? ""), Encoding.UTF8.GetBytes(_code));

    public string Renew() => _code = Make();

    private static string Make() => WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(16));
}
