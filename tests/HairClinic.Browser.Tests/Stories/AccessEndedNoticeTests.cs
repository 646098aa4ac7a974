using HairClinic.Web.Accounts;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>A page stands open while its person's sign-in is ended at another screen.</summary>
public sealed class AccessEndedNoticeTests(ChromiumBrowser chromium)
{
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 0);

    [Fact]
    public async Task A_search_after_the_sign_in_was_ended_elsewhere_says_so_and_leads_back_to_where_one_was()
    {
        var faults = new FaultLog();
        await using var site = await Site.OpenAsync(Now, faults);
        var owner = await OneOwner.LayAsync(site);
        var page = await chromium.DeviceAsync(site, Pages.Desk);
        await OneOwner.SignInAsync(page);
        await SearchAsync(page, "Ada");
        await page.Locator("[role=listbox] [role=option]").First.WaitForAsync();
        await Assertions.Expect(Words(page)).ToBeHiddenAsync();

        await owner.DoAsync(
            site,
            async db =>
            {
                await PersonSessions.EndAllAsync(db, owner.PersonId, Now, CancellationToken.None);
                return await db.SaveChangesAsync();
            }
        );
        await Client(page).FillAsync("Ada F");

        await Assertions.Expect(Words(page)).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("#blazor-error-ui")).ToBeHiddenAsync();
        await Assertions.Expect(page.GetByText("Looking…")).ToHaveCountAsync(0);
        await page.PictureAsync("access-ended");
        await page.NothingForAxeAsync();
        Assert.Empty(faults.Lines);

        await page.GetByRole(AriaRole.Link, new() { Name = "Sign in again" }).ClickAsync();
        await page.ArriveAsync("/sign-in?*");
        await page.GetByLabel("Name or e-mail").FillAsync(OneOwner.Name);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(OneOwner.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.ArriveAsync("/visits/book-visit");
    }

    private static async Task SearchAsync(IPage page, string typed)
    {
        await page.OpenAsync("/visits/book-visit");
        await Client(page).ClickAsync();
        await Client(page).PressSequentiallyAsync(typed);
    }

    private static ILocator Client(IPage page) => page.GetByRole(AriaRole.Combobox, new() { Name = "Client" });

    private static ILocator Words(IPage page) => page.GetByText("You no longer have access here");
}
