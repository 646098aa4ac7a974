using Microsoft.AspNetCore.Localization;

namespace HairClinic.Web.Language;

/// <summary>The languages of the program. A client's choice is remembered on the device, so that it holds before anybody is known.</summary>
public static class Languages
{
    public const string Cookie = "language";

    /// <summary>What the program speaks, and by which country's dates and numbers: a new one is a line here and its file of words.</summary>
    public static readonly IReadOnlyList<(string Code, string Name)> All =
    [
        ("en-GB", "English"),
        ("en-US", "English (US)"),
        ("en-IE", "English (Ireland)"),
        ("es-ES", "Español"),
    ];

    /// <summary>Each language once, by its two letters, whatever the country.</summary>
    public static readonly IReadOnlyList<(string Code, string Name)> Spoken =
    [
        .. All.Select(l => (l.Code[..2], l.Name)).DistinctBy(l => l.Item1),
    ];

    // Two letters each: languages in which every sentence of the program is there. A test counts what is missing.
    private static readonly HashSet<string> Complete = ["en"];

    /// <summary>Whether the staff's screens can be shown in it: half a language is read out by the wrong voice.</summary>
    public static bool IsComplete(CultureInfo culture) => Complete.Contains(culture.TwoLetterISOLanguageName);

    /// <summary>What staff read: the practice's language if the program speaks all of it, else English as their country writes dates.</summary>
    /// <param name="region">ISO 3166 country.</param>
    public static CultureInfo CultureForStaff(CultureInfo practice, string region) =>
        IsComplete(practice) ? practice : CultureInfo.GetCultureInfo(KnownOrNull($"en-{region}") ?? "en-GB");

    public static string? KnownOrNull(string? code) => All.Any(l => l.Code == code) ? code : null;

    public static void Remember(HttpContext http, string? code)
    {
        if (KnownOrNull(code) is { } known)
            http.Response.Cookies.Append(
                Cookie,
                known,
                new()
                {
                    HttpOnly = true,
                    IsEssential = true,
                    MaxAge = TimeSpan.FromDays(400),
                    SameSite = SameSiteMode.Lax,
                    Secure = http.Request.IsHttps,
                }
            );
        else
            http.Response.Cookies.Delete(Cookie);
    }

    /// <summary>The language chosen on this device; null where none was.</summary>
    public static Task<ProviderCultureResult?> FromCookieAsync(HttpContext http) =>
        Task.FromResult(KnownOrNull(http.Request.Cookies[Cookie]) is { } known ? new ProviderCultureResult(known) : null);
}
