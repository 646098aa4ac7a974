using System.Reflection;
using HairClinic.Domain.Visits;
using HairClinic.Web;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>
/// Every page there is, found by its route, on the demo practice: it opens, it fits the three screens, and the
/// accessibility checker finds nothing. A new page is looked at without anybody adding it here.
/// </summary>
public sealed class EveryScreenTests(ChromiumBrowser chromium, DemoFolder demo)
{
    private static readonly string[] Routes =
    [
        .. typeof(Clinic)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes<RouteAttribute>())
            .Select(r => r.Template)
            // The guide belongs to an empty database; its story is told apart.
            .Where(r => !r.StartsWith("/first-run/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    [Fact]
    public async Task Every_screen_opens_fits_and_is_clean_for_axe()
    {
        await using var site = await demo.OpenSiteAsync();
        var ids = await IdsAsync(site);
        var client = ids["ClientId"];
        var link = await demo.LinkAsync(site, c => c.Id == client);
        var mishaps = new List<string>();
        var page = await SignInAsync(site, link);
        foreach (var route in Routes)
        {
            // These open only with a visit of their own to change; the client's own story looks at them.
            if (route is "/my-hair/move-my-time" or "/my-hair/call-off-my-time")
                continue;
            // The client's own pages are judged where it matters most.
            var own =
                route.StartsWith("/my-hair", StringComparison.Ordinal)
                && route is not ("/my-hair/ask-link" or "/my-hair/open-link" or "/my-hair/demo-letters");
            var path = RouteIds.PathOf(route, ids);
            mishaps.AddRange(await LookAsync(page, path, own ? [Pages.Phone] : [Pages.Desk, Pages.Tablet, Pages.Phone]));
        }

        Assert.Empty(mishaps);
    }

    /// <summary>A page looks the same when it is opened on a screen as when a window becomes as small: it is opened once.</summary>
    private static async Task<IEnumerable<string>> LookAsync(IPage page, string path, (int Width, int Height)[] screens)
    {
        await page.SetViewportSizeAsync(screens[0].Width, screens[0].Height);
        var answer = await page.GotoAsync(path);
        if (await page.Locator("[data-interactive]").CountAsync() > 0)
            await page.ReadyAsync();
        await page.Locator("h1").First.WaitForAsync();
        var found = new List<string>();
        if (answer!.Status != 200 && path is not "/not-found")
            found.Add($"{path}: {answer.Status}");
        foreach (var screen in screens)
        {
            await page.SetViewportSizeAsync(screen.Width, screen.Height);
            if (!await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"))
                found.Add($"{path} is wider than {screen.Width}");
            // The tablet shows what the desk shows, narrower: it need only fit.
            if (screen != Pages.Tablet)
                found.AddRange(await page.FoundByAxeAsync());
        }
        return found;
    }

    private Task<Dictionary<string, Guid>> IdsAsync(Site site) =>
        site.DoAsync(
            demo.Practice,
            async (_, db) =>
            {
                var now = site.Clock.GetCurrentInstant();
                var rebonds = db.ServiceKinds.Where(s => s.Purpose == ServicePurpose.Rebond).Select(s => s.Id);
                var visit = await db
                    .Visits.Where(v => v.State == VisitState.Booked && v.StartsAt > now && rebonds.Contains(v.ServiceKindId))
                    .OrderBy(v => v.StartsAt)
                    .FirstAsync();
                var client = await db
                    .Clients.Where(c => db.Bonds.Any(b => b.ClientId == c.Id && b.RemovedOn == null))
                    // By an address that is not confirmed their photos, units and papers would not open.
                    .Where(c => c.Email != null && db.OpeningAddresses.Any(a => a.ClientId == c.Id && a.ConfirmedAt != null))
                    .FirstAsync();
                return await RouteIds.OfAsync(db, visit, client.Id);
            }
        );

    private async Task<IPage> SignInAsync(Site site, string link)
    {
        var page = await chromium.DeviceAsync(site, Pages.Desk);
        page.SetDefaultTimeout(60_000);
        await page.GotoAsync(link);
        await page.GetByRole(AriaRole.Button, new() { Name = "Show my dates" }).ClickAsync();
        await page.ArriveAsync("/my-hair");
        await page.SignInToDemoAsync("owner");
        await page.ArriveAsync("/due");
        return page;
    }
}
