using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>Debian's Chromium, as it is started everywhere: it asks nothing of anybody but the site.</summary>
public static class Chromium
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    /// <exception cref="InvalidOperationException">It is not on this machine.</exception>
    public static Task<IBrowser> LaunchAsync(IPlaywright playwright)
    {
        var path =
            Places.FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("Chromium is missing: apt-get install chromium");
        return playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = path,
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );
    }
}
