using System.Text.RegularExpressions;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.MyHair;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using NodaTime;
using NodaTime.Text;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>
/// A client of the demo books a time, tells of a lift and looks for another, and the desk books the same client: each of them sees
/// that the client is taken, and nobody is in two chairs at once.
/// </summary>
public sealed class OnePlaceTests(ChromiumBrowser chromium, DemoFolder demo)
{
    [Fact]
    public async Task One_client_is_in_one_chair_whoever_books()
    {
        await using var site = await demo.OpenSiteAsync();
        var page = await chromium.DeviceAsync(site, Pages.Phone);
        await page.GotoAsync(await demo.LinkAsync(site, c => c.Email == DemoLetters.CasimirsAddress));
        await page.GetByRole(AriaRole.Button, new() { Name = "Show my dates" }).ClickAsync();
        await page.ArriveAsync("/my-hair");
        await page.GotoAsync("/my-hair/choose-a-time?around=2027-02-05");
        await page.Locator("label.tap").Filter(new() { HasText = "Rebond" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Show free times" }).ClickAsync();
        await page.Locator("form[method=post] label.tap").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Book this time" }).ClickAsync();
        await page.GetByText("You are booked").First.WaitForAsync();
        var booked = await VisitAsync(site, demo.Practice);
        var quarterLater = booked.StartsAt + Duration.FromMinutes(15);

        await page.GotoAsync("/my-hair/my-bond-has-lifted");
        await page.Locator("fieldset label.tap").First.ClickAsync();
        await page.Locator("label.zone").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Tell my salon" }).ClickAsync();
        await page.GetByText("The next free times:").WaitForAsync();
        var fix = await page.Locator("a.button[href*='choose-a-time?service=']").EvaluateAllAsync<string[]>("all => all.map(a => a.href)");
        Assert.NotEmpty(fix);
        Assert.DoesNotContain(fix, href => Meets(href, booked));

        // The address of a time that was free when it was drawn.
        var service = Regex.Match(fix[0], "service=([0-9a-f-]+)").Groups[1].Value;
        await page.GotoAsync($"/my-hair/choose-a-time?service={service}&at={InstantPattern.General.Format(quarterLater)}");
        var times = await page.Locator("form[method=post] input[name=At]").EvaluateAllAsync<string[]>("all => all.map(a => a.value)");
        Assert.DoesNotContain(times, at => Meets("at=" + at, booked));

        var desk = await chromium.DeviceAsync(site, Pages.Desk);
        await desk.SignInToDemoAsync("owner", "/day");
        await desk.GetByRole(AriaRole.Link, new() { Name = "Book a visit" }).WaitForAsync();
        await desk.OpenAsync(
            $"/visits/book-visit?client={booked.ClientId}&salon={booked.SalonId}&chair={booked.ChairId}&start={InstantPattern.General.Format(quarterLater)}"
        );
        await desk.GetByText("Casimir Penwarden is booked").WaitForAsync();
        await desk.PictureAsync("one-place-desk-knows");
        await desk.NothingForAxeAsync();
        // By hand at that very time, in whichever chair: refused with the visit that is in the way.
        await desk.GetByText("Another time, by hand").ClickAsync();
        await desk.GetByLabel("Who does it").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await desk.GetByLabel("Chair", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await desk.GetByRole(AriaRole.Button, new() { Name = "Book this time" }).ClickAsync();
        var insist = desk.GetByRole(AriaRole.Button, new() { Name = "Book it all the same" });
        var refused = desk.GetByText("Nothing was booked, and what you typed is still here.");
        await insist.Or(refused).First.WaitForAsync();
        if (await insist.IsVisibleAsync())
            await insist.ClickAsync();
        await refused.WaitForAsync();
        Assert.Contains("Casimir Penwarden is booked", await desk.Locator("[role=alert]").First.InnerTextAsync(), StringComparison.Ordinal);
        await desk.PictureAsync("one-place-refused");

        Assert.Equal(booked.Id, (await VisitAsync(site, demo.Practice)).Id);
    }

    private static bool Meets(string href, Visit booked) =>
        InstantPattern.General.Parse(Uri.UnescapeDataString(Regex.Match(href, "at=([^&]+)").Groups[1].Value)).Value is var at
        && at < booked.EndsAt
        && at + Duration.FromMinutes(5) > booked.StartsAt;

    // The only one ahead: a second would fail here.
    private static Task<Visit> VisitAsync(Site site, Guid practice) =>
        site.DoAsync(
            practice,
            (_, db) =>
                db
                    .Visits.AsNoTracking()
                    .SingleAsync(v =>
                        v.StartsAt > DemoFolder.Now
                        && v.State == VisitState.Booked
                        && db.Clients.Any(c => c.Id == v.ClientId && c.Email == DemoLetters.CasimirsAddress)
                    )
        );
}
