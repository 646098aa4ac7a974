using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>Whoever taps at the end of a long form sees there, without scrolling, why nothing was saved; and what another saved meanwhile.</summary>
public sealed class AtTheFingerTests(ChromiumBrowser chromium, DemoFolder demo)
{
    [Fact]
    public async Task A_refusal_a_fault_and_another_editor_are_seen_where_the_tap_was()
    {
        await using var site = await demo.OpenSiteAsync();
        foreach (var screen in new[] { Pages.Tablet, Pages.Phone })
        {
            var page = await SignedInAsync(site, screen);
            await RefusedAsync(page);
            await FaultsAsync(page);
        }
        await OvertakenAsync(await SignedInAsync(site, Pages.Desk), await SignedInAsync(site, Pages.Desk));
    }

    private async Task<IPage> SignedInAsync(Site site, (int, int) screen)
    {
        var page = await chromium.DeviceAsync(site, screen);
        page.SetDefaultTimeout(60_000);
        await page.SignInToDemoAsync("owner", "/practice/salons");
        await page.ArriveAsync("/practice/salons");
        return page;
    }

    // Opening hours of a week make the form long; a name that is taken is for the book to refuse.
    private static async Task RefusedAsync(IPage page)
    {
        await page.OpenAsync("/practice/salons");
        var salons = page.Locator("a[href*='/practice/edit-salon/']");
        var taken = (await salons.Nth(1).InnerTextAsync()).Trim();
        await page.OpenAsync((await salons.First.GetAttributeAsync("href"))!);
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync(taken);

        var save = page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true });
        await save.ClickAsync();

        var said = page.GetByRole(AriaRole.Alert).Filter(new() { HasText = taken });
        await said.WaitForAsync();
        await Assertions.Expect(said).ToBeInViewportAsync();
        var (notice, button) = ((await said.BoundingBoxAsync())!, (await save.BoundingBoxAsync())!);
        Assert.InRange(button.Y - notice.Y - notice.Height, -1, 40);
        await page.PictureAsync($"at-the-finger-{page.ViewportSize!.Width}");
        await page.NothingForAxeAsync();
    }

    // Nothing is answered: the first question is entered, and the button has said how many there are.
    private static async Task FaultsAsync(IPage page)
    {
        await page.OpenAsync("/practice/add-salon");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();

        await page.Locator(".at-finger").WaitForAsync();
        var name = page.GetByLabel("Name", new() { Exact = true });
        await Assertions.Expect(name).ToBeFocusedAsync();
        await Assertions.Expect(name).ToBeInViewportAsync();
    }

    private static async Task OvertakenAsync(IPage mine, IPage theirs)
    {
        await mine.OpenAsync("/practice/unit-kinds");
        var address = (await mine.Locator("a[href*='/practice/edit-unit-kind/']").First.GetAttributeAsync("href"))!;
        await mine.OpenAsync(address);
        await theirs.OpenAsync(address);
        await theirs.GetByLabel("Workshop").SelectOptionAsync("workshop not known");
        await theirs.GetByLabel("Nine in ten take, days").FillAsync("301");
        await theirs.TapToAsync(theirs.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }), "/practice/unit-kinds");
        await mine.GetByLabel("Nine in ten take, days").FillAsync("302");
        await mine.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();

        await Assertions.Expect(mine.GetByText("now workshop not known")).ToBeVisibleAsync();
        await Assertions.Expect(mine.GetByLabel("Workshop")).ToHaveValueAsync("0");
        await mine.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Take theirs") }).ClickAsync();
        await Assertions.Expect(mine.GetByLabel("Nine in ten take, days")).ToHaveValueAsync("301");
        await mine.NothingForAxeAsync();
        await mine.TapToAsync(mine.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }), "/practice/unit-kinds");
    }
}
