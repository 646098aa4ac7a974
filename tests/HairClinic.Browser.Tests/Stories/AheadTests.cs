using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>The owner looks ahead on the demo practice, has it calculated anew, and stops that again.</summary>
public sealed class AheadTests(ChromiumBrowser chromium, DemoFolder demo)
{
    [Fact]
    public async Task The_page_ahead_is_clean_on_every_device_and_follows_a_run_until_it_is_stopped()
    {
        await using var site = await demo.OpenSiteAsync();
        foreach (var screen in new[] { Pages.Desk, Pages.Tablet, Pages.Phone })
        {
            var page = await DemoFolder.SignInAsync(chromium, site, "owner", screen, timeout: 120_000);
            await page.OpenAsync("/ahead");
            await page.GetByText("Calculated on").First.WaitForAsync();
            await page.GetByText("The numbers of this picture").First.ClickAsync();
            await page.GetByText("How it is counted").First.ClickAsync();
            await page.LookAsync("ahead", screen.Width);
            if (screen == Pages.Phone)
            {
                site.Clock.AdvanceMinutes(1);
                await StopAsync(page);
            }
            await page.Context.CloseAsync();
        }
    }

    private static async Task StopAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Recalculate" }).ClickAsync();
        await page.GetByRole(AriaRole.Progressbar).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop it" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Show the new figures" }).WaitForAsync();
        await page.GetByText("was stopped").WaitForAsync();
        await page.NothingForAxeAsync();
    }
}
