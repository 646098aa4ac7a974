namespace HairClinic.Web.Accounts;

/// <summary>What a browser says it is, in a few words that help to tell one's own devices apart. It proves nothing.</summary>
public static class DeviceDescription
{
    // The order decides: most browsers also name the ones they descend from.
    private static readonly (string Mark, string Word)[] Browsers =
    [
        ("Edg", "Edge"),
        ("OPR/", "Opera"),
        ("Firefox/", "Firefox"),
        ("FxiOS/", "Firefox"),
        ("Chromium/", "Chromium"),
        ("CriOS/", "Chrome"),
        ("Chrome/", "Chrome"),
        ("Safari/", "Safari"),
    ];

    private static readonly (string Mark, string Word)[] Systems =
    [
        ("iPhone", "iPhone"),
        ("iPad", "iPad"),
        ("Android", "Android"),
        ("CrOS", "ChromeOS"),
        ("Windows", "Windows"),
        ("Mac OS X", "Mac"),
        ("Linux", "Linux"),
    ];

    public static string Describe(string? userAgent)
    {
        var browser = Find(Browsers, userAgent);
        var system = Find(Systems, userAgent);
        return (browser, system) switch
        {
            (null, null) => "Unknown device",
            (null, _) => system,
            (_, null) => browser,
            _ => $"{browser} on {system}",
        };
    }

    private static string? Find((string Mark, string Word)[] known, string? text) =>
        known.FirstOrDefault(k => text?.Contains(k.Mark, StringComparison.Ordinal) == true).Word;
}
