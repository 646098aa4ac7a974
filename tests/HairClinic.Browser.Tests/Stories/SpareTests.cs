using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>The owner of the demo practice asks what certainty would cost, keeps a spare of one kind, and a client's next unit follows.</summary>
public sealed class SpareTests(ChromiumBrowser chromium, DemoFolder demo)
{
    private const string Kind = "Mono top with rim";

    [Fact]
    public async Task What_certainty_costs_is_seen_on_every_device_and_a_spare_that_is_kept_is_to_be_ordered()
    {
        await using var site = await demo.OpenSiteAsync();
        foreach (var screen in new[] { Pages.Phone, Pages.Desk })
        {
            var page = await DemoFolder.SignInAsync(chromium, site, "owner", screen, timeout: 120_000);
            await page.OpenAsync("/ahead");
            await page.GetByRole(AriaRole.Link, new() { Name = "What would certainty cost?" }).First.ClickAsync();
            await page.ArriveAsync("/practice/keep-spares");
            await page.ReadyAsync();
            await page.LookAsync("keep-spares", screen.Width);
            await page.GetByText("The numbers of this picture").First.ClickAsync();
            await page.LookAsync("keep-spares-numbers", screen.Width);
            if (screen == Pages.Desk)
                await KeepAsync(site, page);
            await page.OpenAsync("/due?part=spares&salon=all");
            // Plans follow within moments of the rule; before it nobody need lack one.
            for (var tries = 0; screen == Pages.Desk && tries < 20 && await page.GetByText("order a spare").CountAsync() == 0; tries++)
            {
                await page.WaitForTimeoutAsync(3_000);
                await page.OpenAsync("/due?part=spares&salon=all");
            }
            Assert.True(screen != Pages.Desk || await page.GetByText("order a spare").CountAsync() > 0);
            await page.LookAsync("due-spares", screen.Width);
            await page.Context.CloseAsync();
        }
    }

    private async Task KeepAsync(Site site, IPage page)
    {
        var panel = page.GetByRole(AriaRole.Region, new() { Name = Kind });
        await panel.GetByRole(AriaRole.Radio, new() { Name = "Always one ready" }).CheckAsync();
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }), "/practice/unit-kinds");
        var row = page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = Kind });
        await row.GetByText("Always one ready").WaitForAsync();
        await page.LookAsync("unit-kinds-spares", Pages.Desk.Width);
        await page.TapToAsync(row.GetByRole(AriaRole.Link, new() { Name = Kind }), "/practice/edit-unit-kind/*");
        // The list says it of two kinds; the form of this one.
        await Assertions.Expect(page.GetByText("Always one ready")).ToHaveCountAsync(1);

        var client = await site.ReadAsync(
            demo.Practice,
            db =>
                db.ReorderPlans.Where(p => !p.AtRisk && p.InHand == 1 && p.InFlight == 0)
                    .Where(p => db.UnitKinds.Any(k => k.Id == p.UnitKindId && k.Name == Kind))
                    .Where(p => db.Bonds.Any(b => b.ClientId == p.ClientId && b.RemovedOn == null))
                    .OrderBy(p => p.ClientId)
                    .Select(p => p.ClientId)
                    .FirstAsync()
        );
        await page.OpenAsync($"/clients/{client}/next-unit");
        await page.GetByText("First: order a spare.").WaitForAsync();
        await page.LookAsync("next-unit-spare", Pages.Desk.Width);
    }
}
