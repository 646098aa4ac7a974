using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>Debian's Chromium, one for all stories; each story opens its own context, as a person with their own device would.</summary>
public sealed class ChromiumBrowser : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public IBrowser Browser => _browser ?? throw new InvalidOperationException("The browser has not been started.");

    public async ValueTask InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        _browser = await Chromium.LaunchAsync(_playwright);
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
    }
}
