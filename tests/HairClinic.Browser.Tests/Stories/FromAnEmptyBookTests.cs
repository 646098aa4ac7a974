using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>
/// Nothing is imported: the first client, their first unit, its order, a late promise, an arrival that goes back, a second one, the first
/// fitting, a loan while the unit is mended, a take-down alone, a day corrected, the unit's end, and the end of need. Each is written where it happens.
/// </summary>
public sealed class FromAnEmptyBookTests(ChromiumBrowser chromium)
{
    /// <summary>A Wednesday.</summary>
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 0);

    private static readonly LocalDate Start = new(2027, 2, 3);

    [Fact]
    public async Task A_practice_that_brings_no_binder_can_tell_the_whole_way_of_a_unit()
    {
        await using var site = await Site.OpenAsync(Now);
        var page = await chromium.DeviceAsync(site, Pages.Desk);
        page.SetDefaultTimeout(60_000);
        await SetUpAsync(site, page);
        var client = await FirstClientAsync(page);
        var practice = Assert.Single(
            await site.Services.GetRequiredService<PracticeJobRunner>().PracticeIdsAsync(TestContext.Current.CancellationToken)
        );

        var unit = await OrderAsync(page, client);
        await LaterAsync(site, page, days: 50);
        await ArriveTwiceAsync(site, page, unit);
        await FitAsync(page);
        await page.OpenAsync($"/clients/{client}/card");
        await page.GetByText("Unit").First.WaitForAsync();
        Assert.Equal(1, await InHandAsync(site, practice));

        await LaterAsync(site, page, days: 28);
        await LendWhileItIsMendedAsync(page, client, unit);
        Assert.Equal(UnitState.Away, await StateAsync(site, practice, unit));

        await LaterAsync(site, page, days: 10);
        await MendedAndTakenDownAsync(page, client, unit);
        await EndAsync(page, unit);
        Assert.Equal(UnitState.Retired, await StateAsync(site, practice, unit));
        await page.OpenAsync($"/units/{unit}/unit-card");
        await page.NothingForAxeAsync();
        await page.PictureAsync("way-09-trail");
        await CorrectTheDayAsync(page);

        await EndNeedAsync(page, client);
        Assert.Equal(NeedEnd.TryingWithout, await site.ReadAsync(practice, db => db.Clients.Select(c => c.NeedEndedBecause).SingleAsync()));
    }

    private static async Task SetUpAsync(Site site, IPage page)
    {
        await page.OpenWelcomeAsync(site);
        await page.BeginAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Tuesday to Saturday, nine to six" }).ClickAsync();
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Linden Yard");
        await page.PickAsync("Time zone", "London");
        await page.GetByLabel("Currency").FillAsync("GBP");
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Save and go on" }), "/first-run/first-chairs");
        await page.ReadyAsync();
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Save and go on" }), "/first-run/first-people");
        await page.ReadyAsync();
        await page.TapToAsync(page.GetByText("I work alone, or leave this for later"), "/first-run/keep-defaults");
        await page.ReadyAsync();
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Keep all and go on" }), "/first-run/bring-binder");
        await page.ReadyAsync();
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Begin with an empty book" }), "/practice/overview");
        await page.OpenAsync("/practice/add-workshop");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Workshop North");
        await page.TapToAsync(Save(page), "/practice/unit-kinds");
        await page.OpenAsync("/practice/add-unit-kind");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Everyday lace");
        await page.GetByLabel("Workshop", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = "Workshop North" });
        await page.TapToAsync(Save(page), "/practice/unit-kinds");
        await page.OpenAsync("/practice/add-product");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Adhesive A");
        await page.TapToAsync(Save(page), "/practice/products");
    }

    private static async Task<Guid> FirstClientAsync(IPage page)
    {
        await page.OpenAsync("/clients/add-client");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Maren Holloway");
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Add client" }), "/clients/*/card");
        return IdIn(page);
    }

    private static async Task<Guid> OrderAsync(IPage page, Guid client)
    {
        await page.OpenAsync($"/clients/{client}/card");
        await page.GetByRole(AriaRole.Link, new() { Name = "Add a unit" }).ClickAsync();
        await page.ArriveAsync("/units/add-unit?client=*");
        await page.ReadyAsync();
        await page.NothingForAxeAsync();
        await ChooseAsync(page, "To be ordered");
        await page.GetByLabel("Kind").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.PictureAsync("way-01-add");
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Add the unit" }), "/orders/place-order?unit=*");
        var unit = Guid.Parse(page.Url[(page.Url.IndexOf('=', StringComparison.Ordinal) + 1)..]);
        await page.ReadyAsync();
        await page.NothingForAxeAsync();
        await page.GetByLabel("Promised for").FillAsync(Iso(Start.PlusDays(40)));
        await page.PictureAsync("way-02-order");
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Order this unit" }), "/orders/*/order-details");
        await page.NothingForAxeAsync();
        return unit;
    }

    private static async Task ArriveTwiceAsync(Site site, IPage page, Guid unit)
    {
        await page.OpenAsync("/orders");
        await page.GetByText("late: ask the workshop").WaitForAsync();
        await page.PictureAsync("way-03-late");
        await page.NothingForAxeAsync();
        // They promise anew; a day before the order is refused, and what was typed stays.
        await page.OpenAsync($"/units/{unit}/take-step?step=Promised");
        await page.GetByLabel("Promised for").FillAsync(Iso(Start.PlusDays(56)));
        await page.GetByLabel("Said on").FillAsync(Iso(Start.PlusDays(-1)));
        await Save(page).ClickAsync();
        await page.GetByText("nothing can be promised before that").First.WaitForAsync();
        await page.GetByLabel("Said on").FillAsync(Iso(Start.PlusDays(50)));
        await page.TapToAsync(Save(page), "/units/*/unit-card");

        var taps = 0;
        await page.OpenAsync("/orders");
        taps++;
        await page.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^Arrived") }).ClickAsync();
        await page.ArriveAsync("/units/*/take-step*");
        await page.ReadyAsync();
        taps++;
        await page.TapToAsync(Save(page), "/orders");
        Assert.Equal(2, taps);

        await page.GetByText("7 days left for a claim").WaitForAsync();
        await page.OpenAsync($"/units/{unit}/take-step?step=Inspected");
        await page.PictureAsync("way-04-inspect");
        await page.NothingForAxeAsync();
        await page.Locator("#f-KindAsOrdered label").Nth(0).ClickAsync();
        await page.Locator("#f-BaseAsOrdered label").Nth(1).ClickAsync();
        await page.Locator("#f-PriceAsOrdered label").Nth(0).ClickAsync();
        await ChooseAsync(page, "Send back for a remake");
        await page.GetByLabel("What is wrong with it").FillAsync("poly, and lace was ordered");
        await ChooseAsync(page, "The workshop");
        await page.GetByLabel("Promised anew for").FillAsync(Iso(Start.PlusDays(80)));
        await page.TapToAsync(Save(page), "/units/*/unit-card");
        await page.GetByText("paid by: the workshop").WaitForAsync();

        await LaterAsync(site, page, days: 20);
        await page.OpenAsync($"/units/{unit}/take-step?step=Arrived");
        await page.TapToAsync(Save(page), "/units/*/unit-card");
        await page.GetByRole(AriaRole.Link, new() { Name = "Inspect", Exact = true }).ClickAsync();
        await page.ArriveAsync("/units/*/take-step*");
        await page.ReadyAsync();
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "All as ordered: accept and save" }), "/units/*/unit-card");
        await page.GetByRole(AriaRole.Link, new() { Name = "Prepared", Exact = true }).ClickAsync();
        await page.ArriveAsync("/units/*/take-step*");
        await page.ReadyAsync();
        await page.TapToAsync(Save(page), "/units/*/unit-card");
    }

    private static async Task FitAsync(IPage page)
    {
        await WalkInAsync(page, "First fitting");
        await page.GetByRole(AriaRole.Link, new() { Name = "Log the rebond" }).ClickAsync();
        await page.ArriveAsync("/visits/*/log-rebond");
        await page.ReadyAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a product" }).ClickAsync();
        await page.Locator("main select").First.SelectOptionAsync(new SelectOptionValue { Label = "Adhesive A" });
        await ChooseAsync(page, "Waits kept");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the rebond" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Due again" }).WaitForAsync();
        await page.PictureAsync("way-05-fitted");
    }

    private static async Task LendWhileItIsMendedAsync(IPage page, Guid client, Guid unit)
    {
        await page.OpenAsync("/units/add-unit");
        await page.GetByLabel("Kind").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByLabel("Here since").FillAsync(Iso(Start));
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Add the unit" }), "/units/*/unit-card");

        await WalkInAsync(page, "Rebond");
        await page.GetByRole(AriaRole.Link, new() { Name = "Log the rebond" }).ClickAsync();
        await page.ArriveAsync("/visits/*/log-rebond");
        await page.ReadyAsync();
        await page.GetByText("No, sound").ClickAsync();
        await page.Locator("label.tap", new() { HasText = "from the stock" }).ClickAsync();
        await page.GetByLabel("Lent: due back on").FillAsync(Iso(Start.PlusDays(150)));
        await ChooseAsync(page, "Waits kept");
        await page.PictureAsync("way-06-lent");
        await page.NothingForAxeAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the rebond" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Due again" }).WaitForAsync();

        await page.OpenAsync("/shelf");
        await page.GetByRole(AriaRole.Heading, new() { NameRegex = new Regex("^To be cleaned") }).WaitForAsync();
        await page.GetByRole(AriaRole.Heading, new() { NameRegex = new Regex("^Lent") }).WaitForAsync();
        await page.PictureAsync("way-07-shelf");
        await page.NothingForAxeAsync();
        await page.OpenAsync($"/units/{unit}/take-step?step=SentForRepair");
        await ChooseAsync(page, "Hair knotted in");
        await page.TapToAsync(Save(page), "/units/*/unit-card");
        await page.OpenAsync($"/clients/{client}/card");
        await page.GetByText("away for repair").WaitForAsync();
    }

    private static async Task MendedAndTakenDownAsync(IPage page, Guid client, Guid unit)
    {
        await page.OpenAsync($"/units/{unit}/take-step?step=BackFromRepair");
        await page.GetByLabel("What it cost").FillAsync("45.00");
        await page.TapToAsync(Save(page), "/units/*/unit-card");
        await page.GetByRole(AriaRole.Link, new() { Name = "It is clean" }).ClickAsync();
        await page.ArriveAsync("/units/*/take-step*");
        await page.ReadyAsync();
        await page.TapToAsync(Save(page), "/units/*/unit-card");

        await WalkInAsync(page, "Rebond");
        await page.GetByRole(AriaRole.Link, new() { Name = "Take down only" }).ClickAsync();
        await page.ArriveAsync("/visits/*/log-take-down");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Take down only" }).WaitForAsync();
        await page.ReadyAsync();
        await ChooseAsync(page, "A rest without hair");
        await page.GetByText("No, sound").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the take-down" }).ClickAsync();
        await page.GetByText("nothing falls due").WaitForAsync();
        await page.OpenAsync($"/clients/{client}/card");
        await page.GetByText("Nothing is bonded, so nothing falls due.").WaitForAsync();
    }

    private static async Task EndAsync(IPage page, Guid unit)
    {
        // Without a word of why it is not put away.
        await page.OpenAsync($"/units/{unit}/take-step?step=Retired");
        await Save(page).ClickAsync();
        await page.GetByText("Say why.").First.WaitForAsync();
        await page.GetByLabel("Why").FillAsync("worn at the front");
        await page.TapToAsync(Save(page), "/units/*/unit-card");
    }

    // What they promised anew was said two days before, whatever came after it.
    private static async Task CorrectTheDayAsync(IPage page)
    {
        var promised = page.Locator("section li", new() { HasText = "Promised" }).Filter(new() { HasText = "Change the date" });
        await promised.GetByRole(AriaRole.Link, new() { Name = "Change the date", Exact = true }).First.ClickAsync();
        await page.ArriveAsync("/units/*/correct-step-day?step=*");
        await page.ReadyAsync();
        await page.NothingForAxeAsync();
        await page.GetByLabel("It was on").FillAsync(Iso(Start.PlusDays(48)));
        await page.GetByLabel("What was wrong").FillAsync("the call was two days before");
        await page.TapToAsync(page.GetByRole(AriaRole.Button, new() { Name = "Change it" }), "/units/*/unit-card");
        await page.GetByText("the call was two days before").WaitForAsync();
        await page.PictureAsync("way-10-corrected");
    }

    private static async Task EndNeedAsync(IPage page, Guid client)
    {
        await page.OpenAsync($"/clients/{client}/end-need");
        await page.NothingForAxeAsync();
        await ChooseAsync(page, "They try without");
        await page.PictureAsync("way-11-end");
        await Save(page).ClickAsync();
        await page.GetByText("Nothing more is ordered or sent.").WaitForAsync();
    }

    private static async Task WalkInAsync(IPage page, string service)
    {
        await page.OpenAsync("/at-the-chair/walk-in");
        await page.PickAsync("Client", "Maren");
        await page.Locator("label.tap", new() { HasTextRegex = new Regex($"^\\s*{service}\\s*\\d") }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin now" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "To the chair" }).ClickAsync();
        await page.ArriveAsync("/at-the-chair");
        await page.ReadyAsync();
    }

    private static async Task LaterAsync(Site site, IPage page, int days)
    {
        site.Clock.Advance(Duration.FromDays(days));
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name or e-mail").FillAsync("owner@practice.example");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync("a long enough phrase");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.LeaveAsync("/sign-in");
    }

    private static ILocator Save(IPage page) => page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true });

    private static Task ChooseAsync(IPage page, string words) => page.Locator("label.tap", new() { HasText = words }).First.ClickAsync();

    private static Guid IdIn(IPage page) => Guid.Parse(new Uri(page.Url).AbsolutePath.Split('/')[2]);

    private static string Iso(LocalDate day) => NodaTime.Text.LocalDatePattern.Iso.Format(day);

    private static Task<UnitState> StateAsync(Site site, Guid practice, Guid unit) =>
        site.ReadAsync(practice, db => db.HairSystems.Where(u => u.Id == unit).Select(u => u.State).SingleAsync());

    /// <summary>The plan follows the bond within five seconds.</summary>
    private static async Task<int> InHandAsync(Site site, Guid practice)
    {
        for (var wait = 0; ; wait++)
        {
            var plan = await site.ReadAsync(practice, db => db.ReorderPlans.Select(p => (int?)p.InHand).SingleOrDefaultAsync());
            if (plan is { } units)
                return units;
            Assert.True(wait < 50, "The plan did not follow within five seconds.");
            await Task.Delay(100);
        }
    }
}
