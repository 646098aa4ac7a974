using System.Collections.Concurrent;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>Whoever types the moment a page or a field is there, on a busy machine too, finds what they typed.</summary>
public sealed class TypingAtOnceTests(ChromiumBrowser chromium)
{
    // A busy page runs what waits for its turn late, and key strokes first.
    private const string LateTurns = """
        const soon = globalThis.setTimeout;
        globalThis.setTimeout = (what, wait, ...rest) => soon(what, wait || 2_000, ...rest);
        """;

    [Fact]
    public async Task A_search_field_typed_into_at_once_searches_for_that_and_not_for_what_stood_there_too()
    {
        await using var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 9, 0));
        var page = await chromium.DeviceAsync(site, Pages.Desk);
        await page.AddInitScriptAsync(LateTurns);
        await page.OpenWelcomeAsync(site);
        await page.BeginAsync();
        Assert.Equal("Europe/London", await Zone(page).InputValueAsync());

        await Zone(page).ClickAsync();
        await page.Keyboard.TypeAsync("Paris");

        await Assertions.Expect(Zone(page)).ToHaveValueAsync("Paris");
        await page.Locator("[role=listbox] [role=option]").First.ClickAsync();
        await Assertions.Expect(Zone(page)).ToHaveValueAsync("Europe/Paris");

        // And what comes all at once, from the clipboard or a scanner, without a key.
        await page.GetByLabel("Currency").ClickAsync();
        await Zone(page).ClickAsync();
        await page.Keyboard.InsertTextAsync("Berlin");
        await Assertions.Expect(Zone(page)).ToHaveValueAsync("Berlin");
    }

    [Fact]
    public async Task What_is_typed_into_a_page_that_is_only_drawn_stands_there_once_it_is_live_and_is_typed_on()
    {
        await using var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 9, 0));
        var page = await chromium.DeviceAsync(site, Pages.Desk);
        var live = await DrawnAsync(page, site);
        var name = page.GetByLabel("Name", new() { Exact = true });
        await name.FillAsync("Linden Yard");
        await Zone(page).ClickAsync();
        await page.Keyboard.TypeAsync("Par");

        live.SetResult();
        await page.ReadyAsync();
        await page.Locator("[role=listbox] [role=option]").First.WaitForAsync();
        await page.Keyboard.TypeAsync("is");

        await Assertions.Expect(Zone(page)).ToHaveValueAsync("Paris");
        await Assertions.Expect(name).ToHaveValueAsync("Linden Yard");
        await page.Locator("[role=listbox] [role=option]", new() { HasText = "Europe/Paris" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save and go on" }).ClickAsync();
        await page.ArriveAsync("/first-run/first-chairs");
    }

    [Fact]
    public async Task A_form_sent_from_a_page_that_is_only_drawn_is_sent_once_it_is_live_and_no_address_tells_what_was_typed()
    {
        await using var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 9, 0));
        var page = await chromium.DeviceAsync(site, Pages.Desk);
        // The page goes on asking while they are looked through.
        var addresses = new ConcurrentQueue<string>();
        page.Request += (_, request) => addresses.Enqueue(request.Url);
        var live = await DrawnAsync(page, site);
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Linden Yard");

        await page.GetByRole(AriaRole.Button, new() { Name = "Save and go on" }).ClickAsync();
        await page.WaitForTimeoutAsync(500);
        Assert.EndsWith("/first-run/first-salon", page.Url, StringComparison.Ordinal);

        live.SetResult();
        await page.ArriveAsync("/first-run/first-chairs");
        Assert.DoesNotContain(addresses, address => address.Contains("Linden", StringComparison.Ordinal));
        await page.OpenAsync("/practice/salons");
        await page.GetByText("Linden Yard").First.WaitForAsync();
    }

    /// <summary>The guide's first salon, which does not become live before it may.</summary>
    private static async Task<TaskCompletionSource> DrawnAsync(IPage page, Site site)
    {
        await page.OpenWelcomeAsync(site);
        await page.BeginAsync();
        var live = await page.HoldAsync();
        await page.ReloadAsync();
        return live;
    }

    private static ILocator Zone(IPage page) => page.GetByRole(AriaRole.Combobox, new() { Name = "Time zone" });
}
