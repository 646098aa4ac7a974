using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>Debian's Chromium, one for all stories; each story opens its own context, as a person with their own device would.</summary>
public sealed class ChromiumBrowser : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? browser;

    public IBrowser Browser => browser ?? throw new InvalidOperationException("The browser has not been started.");

    public async ValueTask InitializeAsync()
    {
        playwright = await Playwright.CreateAsync();
        browser = await Chromium.LaunchAsync(playwright);
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
            await browser.DisposeAsync();
        playwright?.Dispose();
    }
}
