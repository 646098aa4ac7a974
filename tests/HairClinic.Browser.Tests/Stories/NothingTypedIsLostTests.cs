using HairClinic.Domain.Visits;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>The database goes away, or the site begins anew, with something typed: it is still there, and one tap saves it, once.</summary>
public sealed class NothingTypedIsLostTests(ChromiumBrowser chromium, DemoSite demo) : IClassFixture<DemoSite>
{
    private static readonly TimeSpan Away = TimeSpan.FromSeconds(3);

    [Fact]
    public async Task A_client_is_added_though_the_book_was_away_at_the_tap()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        await page.OpenAsync("/clients/add-client");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Ottilie Awaye");
        await using (await demo.Site.LoseDatabaseAsync())
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Add client" }).ClickAsync();
            await page.GetByText("Not saved yet: the book cannot be reached. It is tried again by itself.").WaitForAsync();
            await Task.Delay(Away, TestContext.Current.CancellationToken);
            // Tapped once more meanwhile: still one client.
            await page.GetByRole(AriaRole.Button, new() { Name = "Add client" }).ClickAsync();
        }

        await page.ArriveAsync("/clients/*/card");
        Assert.Equal(1, await ClientsAsync("Ottilie Awaye"));
    }

    [Fact]
    public async Task A_rebond_typed_through_an_outage_is_kept_as_a_draft_and_saved_with_one_tap()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        var (visit, bond) = await demo.LiftToldAsync();
        await page.OpenAsync($"/visits/{visit}/log-rebond");
        var note = page.Locator("#f-Note");
        await note.PressSequentiallyAsync("before");
        await using (await demo.Site.LoseDatabaseAsync())
        {
            await note.PressSequentiallyAsync(" during");
            await page.GetByText("The book cannot be reached. What you typed is still here; it is kept as soon as it can be.")
                .WaitForAsync();
            await Task.Delay(Away, TestContext.Current.CancellationToken);
        }
        await page.GetByText("it is kept as soon as it can be.").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        Assert.Contains("before during", await DraftAsync(visit), StringComparison.Ordinal);
        await note.PressSequentiallyAsync(" after");
        await page.GetByText("No, sound").ClickAsync();
        await page.GetByText("Waits kept").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^(Same as last time|All as new)$") }).ClickAsync();
        await using (await demo.Site.LoseDatabaseAsync())
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Save the rebond" }).ClickAsync();
            await page.GetByText("Not saved yet").WaitForAsync();
        }

        await page.GetByText("Due again").First.WaitForAsync();
        Assert.NotNull((await demo.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == bond))).RemovedOn);
        var record = await demo.ReadAsync(db => db.VisitRecords.SingleAsync(r => r.VisitId == visit));
        Assert.Equal(("before during after", true), (record.Note, record.Grades.AnyGiven));
    }

    [Fact]
    public async Task A_setting_is_saved_though_the_book_was_away_at_the_tap()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        await page.OpenAsync("/practice/add-workshop");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Workshop Faraway");
        await using (await demo.Site.LoseDatabaseAsync())
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
            await page.GetByText("Not saved yet").WaitForAsync();
        }

        await page.LeaveAsync("/practice/add-workshop");
        Assert.Equal(1, await demo.ReadAsync(db => db.Workshops.CountAsync(w => w.Name == "Workshop Faraway")));
    }

    [Fact]
    public async Task Health_answers_typed_through_an_outage_and_a_restart_are_there_and_no_browser_keeps_them()
    {
        var page = await demo.SignInAsync(chromium, "stylist");
        var client = await demo.ReadAsync(db =>
            db.Visits.Where(v => v.State == VisitState.Booked && db.People.Any(p => p.Id == v.PersonId && p.Name == "Imre Castellan"))
                .Select(v => v.ClientId)
                .FirstAsync()
        );
        await page.OpenAsync($"/clients/{client}/health-answers");
        var habits = page.Locator("#f-Habits");
        await habits.ClearAsync();
        await habits.PressSequentiallyAsync("swims");
        await using (await demo.Site.LoseDatabaseAsync())
        {
            await habits.PressSequentiallyAsync(" daily");
            await page.GetByText("it is kept as soon as it can be.").WaitForAsync();
        }
        await page.GetByText("it is kept as soon as it can be.").WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await AgainAsync(page);

        await page.GetByText("What you typed before is here again.").First.WaitForAsync();
        await Assertions.Expect(habits).ToHaveValueAsync("swims daily");
        Assert.Equal(0, await page.EvaluateAsync<int>("sessionStorage.length + localStorage.length"));
        await using (await demo.Site.LoseDatabaseAsync())
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).First.ClickAsync();
            await page.GetByText("Not saved yet: the book").WaitForAsync();
        }
        await page.ArriveAsync($"/clients/{client}/card");
    }

    [Fact]
    public async Task What_was_typed_into_add_client_is_there_after_the_site_began_anew()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        await page.OpenAsync("/clients/add-client");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Ottilie Again");
        await page.GetByLabel("E-mail").FillAsync("ottilie@again.example");
        await page.GetByLabel("Home salon").SelectOptionAsync("Tallow Court");
        var key = await page.Locator("[data-once]").InputValueAsync();

        await AgainAsync(page);

        await page.GetByText("What you typed before is here again.").WaitForAsync();
        await Assertions.Expect(page.GetByLabel("Name", new() { Exact = true })).ToHaveValueAsync("Ottilie Again");
        await Assertions.Expect(page.GetByLabel("E-mail")).ToHaveValueAsync("ottilie@again.example");
        await Assertions.Expect(page.Locator("[data-once]")).ToHaveValueAsync(key);
        Assert.Equal(0, await page.EvaluateAsync<int>("sessionStorage.length"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Add client" }).ClickAsync();
        await page.ArriveAsync("/clients/*/card");
        var salon = await demo.ReadAsync(db =>
            db.Clients.Where(c => c.Name == "Ottilie Again").Select(c => db.Salons.Single(s => s.Id == c.HomeSalonId).Name).SingleAsync()
        );
        Assert.Equal("Tallow Court", salon);
    }

    [Fact]
    public async Task What_was_chosen_and_typed_in_book_a_visit_is_there_after_the_site_began_anew()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        await page.OpenAsync("/visits/book-visit");
        await page.PickAsync("Client", "Vera Dun");
        await page.GetByLabel("Within").SelectOptionAsync("two weeks either side");
        await page.GetByText("Another time, by hand").ClickAsync();
        await page.GetByLabel("Time", new() { Exact = true }).FillAsync("13:15");
        await page.GetByLabel("Note for the visit").FillAsync("Brings the spare");

        await AgainAsync(page);

        await page.GetByText("What you typed before is here again.").WaitForAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Combobox, new() { Name = "Client" })).ToHaveValueAsync("Vera Dunmarrow");
        await Assertions.Expect(page.GetByLabel("Within")).ToHaveValueAsync("14");
        await Assertions.Expect(page.GetByLabel("Time", new() { Exact = true })).ToHaveValueAsync("13:15");
        await Assertions.Expect(page.GetByLabel("Note for the visit")).ToHaveValueAsync("Brings the spare");
        await page.Locator("button.slot").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Booked." }).WaitForAsync();
        Assert.Equal(1, await demo.ReadAsync(db => db.Visits.CountAsync(v => v.Note == "Brings the spare")));
    }

    [Fact]
    public async Task A_page_opened_while_the_book_is_away_becomes_live_once_it_is_back()
    {
        var page = await demo.SignInAsync(chromium, "desk");
        var live = await page.HoldAsync();
        await page.GotoAsync("/clients/add-client");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Ottilie Early");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add client" }).ClickAsync();
        await using (await demo.Site.LoseDatabaseAsync())
        {
            live.SetResult();
            await page.GetByText("The book cannot be reached just now.").WaitForAsync();
        }

        await page.ArriveAsync("/clients/*/card");
        Assert.Equal(1, await ClientsAsync("Ottilie Early"));
    }

    private Task<int> ClientsAsync(string name) => demo.ReadAsync(db => db.Clients.CountAsync(c => c.Name == name));

    private Task<string> DraftAsync(Guid visit) =>
        demo.ReadAsync(db => db.Drafts.Where(d => d.SubjectId == visit).Select(d => d.Body).SingleAsync());

    /// <summary>The site begins anew; the page finds it out and loads itself.</summary>
    private async Task AgainAsync(IPage page)
    {
        await page.EvaluateAsync("window.before = true");
        await demo.Site.RestartAsync();
        await page.WaitForFunctionAsync(
            "() => !window.before && document.querySelector('[data-interactive=true]')",
            null,
            new() { Timeout = 180_000 }
        );
    }
}
