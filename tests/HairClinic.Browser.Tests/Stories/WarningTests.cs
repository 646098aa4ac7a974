using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>What the world does to the model, as a desk and an owner are told of it: a unit that wears fast, a workshop that declines, an order that was forgotten.</summary>
public sealed class WarningTests(ChromiumBrowser chromium, DemoFolder demo)
{
    [Fact]
    public async Task Card_and_due_list_say_why_somebody_is_in_danger()
    {
        await using var site = await demo.OpenSiteAsync();
        var page = await SignInAsync(site, "desk");
        await SaidAsync(page, await ClientAsync(site, c => c.Code == "T-08"), "wears faster than its age: look at the spare", "wears-fast");
        await SaidAsync(page, await ClientAsync(site, c => c.Code == "T-09"), "is not counted on: it is far overdue", "forgotten-order");
        await page.GetByText(new Regex(@"T-09-old \([^)]*\) has been on order since")).Filter(new() { Visible = true }).WaitForAsync();
        var weaker = await site.ReadAsync(
            demo.Practice,
            db =>
                db.ReorderPlans.Where(p => p.WeakerSince != null && p.AtRisk)
                    .Where(p => db.Bonds.Any(b => b.ClientId == p.ClientId && b.RemovedOn == null))
                    .Where(p => db.Clients.Any(c => c.Id == p.ClientId && db.Salons.Any(s => s.Id == c.HomeSalonId && s.Currency == "GBP")))
                    .OrderBy(p => p.ClientId)
                    .Select(p => p.ClientId)
                    .FirstAsync()
        );
        await SaidAsync(page, weaker, "seem to last shorter", "weaker-units");

        await page.OpenAsync("/due?part=at-risk&salon=all");
        await page.GetByText("wears faster than its age: look at the spare").First.WaitForAsync();
        await page.LookAtEveryWidthAsync("due-warnings");
    }

    [Fact]
    public async Task The_owner_sees_which_workshop_declines_and_whom_it_concerns()
    {
        await using var site = await demo.OpenSiteAsync();
        var page = await SignInAsync(site, "owner");
        await page.OpenAsync("/what-lasts");
        await page.GetByRole(AriaRole.Link, new() { Name = "Is a workshop or an adhesive getting worse?" }).ClickAsync();
        await page.ArriveAsync("/what-lasts/workshop-watch");
        await page.GetByRole(AriaRole.Heading, new() { NameRegex = new("^Units from Workshop Alder delivered since") }).WaitForAsync();
        Assert.True(await page.GetByText("may lack a good unit").CountAsync() > 3);
        await page.LookAtEveryWidthAsync("workshop-watch");
    }

    [Fact]
    public async Task An_order_that_may_be_forgotten_is_asked_about_and_counts_again_once_somebody_says_so()
    {
        await using var site = await demo.OpenSiteAsync();
        var page = await SignInAsync(site, "desk");
        await page.OpenAsync("/due");
        await page.GetByRole(AriaRole.Link, new() { Name = "Look at the dates" }).ClickAsync();
        await page.ArriveAsync("/dates-to-check");
        await page.ReadyAsync();
        await page.LookAtEveryWidthAsync("dates-to-check");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Yes, still waiting\\W+T-09-old") }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { NameRegex = new("T-09-old") })).ToHaveCountAsync(0);

        await page.OpenAsync($"/clients/{await ClientAsync(site, c => c.Code == "T-09")}/card");
        await Assertions.Expect(page.GetByText("is not counted on: it is far overdue")).ToHaveCountAsync(0);
        await page.GetByText(new Regex(@"T-09-old \([^)]*\) is on order, expected between"))
            .Filter(new() { Visible = true })
            .WaitForAsync();
    }

    private Task<Guid> ClientAsync(Site site, System.Linq.Expressions.Expression<Func<Client, bool>> whose) =>
        site.ReadAsync(demo.Practice, db => db.Clients.Where(whose).Select(c => c.Id).SingleAsync());

    private static async Task SaidAsync(IPage page, Guid client, string sentence, string name)
    {
        await page.OpenAsync($"/clients/{client}/card");
        await page.GetByText(sentence).First.WaitForAsync();
        await page.LookAtEveryWidthAsync(name);
    }

    private Task<IPage> SignInAsync(Site site, string who) => DemoFolder.SignInAsync(chromium, site, who, Pages.Desk, timeout: 60_000);
}
