using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>Debian's Chromium, one for all stories; each story opens its own context, as a person with their own device would.</summary>
public sealed class ChromiumBrowser : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private IPlaywright? playwright;
    private IBrowser? browser;

    public IBrowser Browser => browser ?? throw new InvalidOperationException("The browser has not been started.");

    public async ValueTask InitializeAsync()
    {
        var path =
            Places.FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("Chromium is missing: apt-get install chromium");
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(
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

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
            await browser.DisposeAsync();
        playwright?.Dispose();
    }
}
