using HairClinic.Domain.Bonding;
using HairClinic.Domain.Visits;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>What is tapped and typed between the first picture and the live page is carried out once, in order, with what was typed.</summary>
public sealed class EarlyTapsTests(ChromiumBrowser chromium, DemoSite demo) : IClassFixture<DemoSite>
{
    [Fact]
    public async Task A_choice_tapped_at_once_stays_and_what_is_saved_at_once_is_saved()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        var bonds = await LogAsync(page, slow: false);

        var bond = await demo.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == bonds, TestContext.Current.CancellationToken));

        Assert.Equal(RemovalReason.Scheduled, bond.RemovedBecause);
    }

    [Fact]
    public async Task So_it_does_on_a_slow_line()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        await page.SlowAsync();
        var bonds = await LogAsync(page, slow: true);

        var bond = await demo.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == bonds, TestContext.Current.CancellationToken));

        Assert.Equal(RemovalReason.Scheduled, bond.RemovedBecause);
    }

    [Fact]
    public async Task A_name_typed_at_once_into_book_a_visit_is_searched_for_and_typed_on()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        var live = await page.HoldAsync();
        await page.GotoAsync("/visits/book-visit");
        var client = page.GetByRole(AriaRole.Combobox, new() { Name = "Client" });
        await client.ClickAsync();
        await page.Keyboard.TypeAsync("Vera");
        await page.GetByLabel("Note for the visit").FillAsync("Brings the spare");
        await client.ClickAsync();
        await page.Keyboard.PressAsync("End");

        live.SetResult();
        await page.ReadyAsync();
        await page.Keyboard.TypeAsync(" Dun");

        await Assertions.Expect(client).ToHaveValueAsync("Vera Dun");
        await page.Locator("[role=option]", new() { HasText = "Vera Dunmarrow" }).WaitForAsync();
        await Assertions.Expect(page.GetByLabel("Note for the visit")).ToHaveValueAsync("Brings the spare");
    }

    [Fact]
    public async Task A_free_time_tapped_twice_at_once_is_booked_once()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        var client = await demo.ReadAsync(db =>
            db.Clients.Where(c => db.Salons.Any(s => s.Id == c.HomeSalonId && s.Name == "Rooksmere Lane") && c.MergedIntoId == null)
                .Where(c => !db.Visits.Any(v => v.ClientId == c.Id && v.State == VisitState.Booked))
                .OrderBy(c => c.Code)
                .FirstAsync(TestContext.Current.CancellationToken)
        );
        var live = await page.HoldAsync();
        await page.GotoAsync($"/visits/book-visit?client={client.Id}");
        await page.GetByLabel("Note for the visit").FillAsync("At once");
        var slot = page.Locator("button.slot").First;
        await slot.ClickAsync();
        await Assertions.Expect(slot).ToHaveAttributeAsync("aria-busy", "true");
        await slot.ClickAsync();

        live.SetResult();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Booked." }).WaitForAsync();

        var visit = await demo.ReadAsync(db =>
            db.Visits.SingleAsync(v => v.ClientId == client.Id && v.State == VisitState.Booked, TestContext.Current.CancellationToken)
        );
        Assert.Equal("At once", visit.Note);
    }

    [Fact]
    public async Task Rang_reached_tapped_as_soon_as_it_is_drawn_is_noted()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        await page.OpenAsync("/due");
        var before = await ContactsAsync();
        await page.SlowAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Contact" }).First.ClickAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Rang, reached" }).ClickAsync();

        await page.GetByText("Noted.").WaitForAsync();
        Assert.Equal(before + 1, await ContactsAsync());
    }

    [Fact]
    public async Task What_was_kept_on_one_page_is_not_done_on_the_next()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        var live = await page.HoldAsync();
        await page.GotoAsync("/visits/book-visit");
        await page.GetByLabel("Note for the visit").FillAsync("Of another page");
        await page.GetByRole(AriaRole.Link, new() { Name = "Due" }).First.ClickAsync();
        await page.ArriveAsync("/due");
        await page.GetByRole(AriaRole.Link, new() { Name = "Day" }).First.ClickAsync();
        await page.ArriveAsync("/day");

        live.SetResult();
        await page.ReadyAsync();
        await page.OpenAsync("/visits/book-visit");

        await Assertions.Expect(page.GetByLabel("Note for the visit")).ToHaveValueAsync("");
        await Assertions.Expect(page.Locator("#page-changed")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_password_cannot_be_typed_into_a_page_that_would_lose_it()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        var person = await demo.ReadAsync(db =>
            db.People.FirstAsync(p => p.Name == "Imre Castellan", TestContext.Current.CancellationToken)
        );
        await page.OpenAsync($"/practice/people/{person.Id}/give-account");
        var live = await page.HoldAsync();
        await page.ReloadAsync();
        var password = page.Locator("main input[type=password]").First;
        await password.ClickAsync();
        await page.Keyboard.TypeAsync("four words in a row");

        await Assertions.Expect(password).ToHaveValueAsync("");
        await Assertions.Expect(password).ToHaveAttributeAsync("aria-busy", "true");
        live.SetResult();
        await page.ReadyAsync();
        await password.ClickAsync();
        await page.Keyboard.TypeAsync("four words in a row");
        await Assertions.Expect(password).ToHaveValueAsync("four words in a row");
    }

    [Fact]
    public async Task Without_scripts_a_live_page_says_that_its_buttons_do_nothing()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        var context = await chromium.Browser.NewContextAsync(
            new()
            {
                BaseURL = demo.Site.Address.ToString(),
                JavaScriptEnabled = false,
                StorageState = await page.Context.StorageStateAsync(),
            }
        );
        var bare = await context.NewPageAsync();

        await bare.GotoAsync("/visits/book-visit");

        // Its own switch for scripts does not make this browser show what stands for readers without them: what they are sent is looked at.
        Assert.Contains(
            "This page works with scripts only",
            await bare.Locator("noscript").First.InnerHTMLAsync(),
            StringComparison.Ordinal
        );
    }

    private Task<int> ContactsAsync() => demo.ReadAsync(db => db.ContactNotes.CountAsync(TestContext.Current.CancellationToken));

    /// <summary>Logs a rebond whose client had told of a lift, all before the page listens; gives the bond taken down.</summary>
    private async Task<Guid> LogAsync(IPage page, bool slow)
    {
        var (visit, bond) = await demo.LiftToldAsync();
        var live = slow ? null : await page.HoldAsync();
        await page.GotoAsync($"/visits/{visit}/log-rebond", new() { WaitUntil = WaitUntilState.Commit });
        await page.GetByText("No, sound").ClickAsync();
        await page.GetByText("Waits kept").ClickAsync();
        foreach (var lots in await page.GetByRole(AriaRole.Group, new() { NameRegex = new("Lot of") }).AllAsync())
            await lots.Locator("label.tap:has(input:not(:disabled))").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^(Same as last time|All as new)$") }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the rebond" }).ClickAsync();
        live?.SetResult();
        await page.GetByText("Due again").First.WaitForAsync();
        return bond;
    }
}
