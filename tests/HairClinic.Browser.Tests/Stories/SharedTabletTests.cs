using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>
/// Two people take turns at one tablet: it is made a shared one, each sets a PIN, one leaves a visit to the other by hand, and it locks
/// by itself when nobody touches it.
/// </summary>
public sealed class SharedTabletTests(ChromiumBrowser chromium)
{
    private const string Password = "long lavender evenings";

    private Visit _visit = null!;

    [Fact]
    public async Task Two_people_take_turns_and_what_is_left_alone_locks()
    {
        await using var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 10, 0));
        var practice = Guid.CreateVersion7();
        await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(practice, "story", services => LayAsync(services, practice));
        var page = await chromium.DeviceAsync(site, Pages.Tablet);
        page.SetDefaultTimeout(60_000);
        var complaints = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                complaints.Add(message.Text);
        };

        await SignInAsync(page, "Ottilie");
        await page.GotoAsync("/practice/make-tablet");
        await page.NothingForAxeAsync();
        await page.GetByLabel("Where it stands").FillAsync("Chair 2 tablet");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make it a shared tablet" }).ClickAsync();
        await page.ArriveAsync("/sign-in");
        await BeginAsync(page, "Mara", "482913");
        await BeginAsync(page, "Ottilie", "593024");

        // Left by hand: the next one finds the same visit, and nothing else of the one before.
        await page.OpenAsync($"/visits/{_visit.Id}/visit-details");
        await page.GetByRole(AriaRole.Button, new() { Name = "Lock now" }).ClickAsync();
        await page.ArriveAsync($"/switch-person?visit={_visit.Id}");
        await LookAtAsync(page, "switch");
        await page.GetByRole(AriaRole.Link, new() { Name = "Mara" }).ClickAsync();
        await LookAtAsync(page, "pin");
        await TapAsync(page, "482913");
        await page.ArriveAsync($"/visits/{_visit.Id}/visit-details");
        Assert.Equal("Mara", await page.Locator(".person summary").InnerTextAsync());
        await page.ReadyAsync();
        // What follows skips three minutes of a live page's clock, of which its connection complains.
        Assert.Empty(complaints);

        // Left alone: three minutes by the page's clock, and nobody pressed anything.
        await page.Clock.InstallAsync();
        await page.GotoAsync($"/visits/{_visit.Id}/visit-details");
        await page.GetByRole(AriaRole.Button, new() { Name = "Lock now" }).WaitForAsync();
        await page.Clock.FastForwardAsync(3 * 60_000);
        await page.ArriveAsync($"/switch-person?visit={_visit.Id}");
        var other = await page.Context.NewPageAsync();
        await other.GotoAsync("/at-the-chair");
        Assert.EndsWith("/switch-person", other.Url, StringComparison.Ordinal);

        // By the keyboard alone.
        await other.GetByRole(AriaRole.Link, new() { Name = "Ottilie" }).PressAsync("Enter");
        await other.GetByLabel("PIN, six digits").PressSequentiallyAsync("593024");
        await other.Keyboard.PressAsync("Enter");
        await other.Locator(".person summary").WaitForAsync();
        Assert.Equal("Ottilie", await other.Locator(".person summary").InnerTextAsync());
    }

    private static async Task SignInAsync(IPage page, string name)
    {
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name or e-mail").FillAsync(name);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.LeaveAsync("/sign-in");
    }

    private static async Task BeginAsync(IPage page, string name, string pin)
    {
        await SignInAsync(page, name);
        await page.GotoAsync("/my-sign-in/set-pin");
        await page.NothingForAxeAsync();
        await page.GetByLabel("PIN, six digits").FillAsync(pin);
        await page.GetByLabel("The same again").FillAsync(pin);
        await page.GetByRole(AriaRole.Button, new() { Name = "Set my PIN" }).ClickAsync();
        await page.GetByText("Your PIN is set.").WaitForAsync();
    }

    private static async Task TapAsync(IPage page, string pin)
    {
        foreach (var digit in pin)
            await page.GetByRole(AriaRole.Button, new() { Name = digit.ToString(), Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Go on" }).ClickAsync();
    }

    private static async Task LookAtAsync(IPage page, string name)
    {
        foreach (var screen in new[] { Pages.Phone, Pages.Tablet })
        {
            await page.SetViewportSizeAsync(screen.Width, screen.Height);
            await page.NothingForAxeAsync();
            await page.PictureAsync($"{name}-{screen.Width}");
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{name} {screen.Width}");
            foreach (var key in await page.Locator("[data-keypad] button").AllAsync())
            {
                // A finger in a glove.
                var box = await key.BoundingBoxAsync();
                Assert.True(box is { Width: >= 64, Height: >= 64 }, $"{name} {screen.Width}: {box?.Width} × {box?.Height}");
            }
        }
    }

    private async Task<bool> LayAsync(IServiceProvider services, Guid practice)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        db.Practices.Add(new PracticeRow(practice));
        var scene = new Scene(db, Instant.FromUtc(2027, 2, 3, 10, 0)).AddPractice("Practice under test");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        var people = new[] { scene.Hire("Ottilie", StaffRole.Owner, salon), scene.Hire("Mara", StaffRole.Stylist, salon) };
        var client = scene.AddClient("C-1", "Ada Fenwick", salon);
        _visit = scene.Book(
            client,
            scene.ServiceWithPurpose(ServicePurpose.Rebond),
            scene.Chairs[0],
            people[1],
            scene.Now + Duration.FromHours(1)
        );
        await db.SaveChangesAsync();
        var users = services.GetRequiredService<UserManager<AppUser>>();
        foreach (var person in people)
        {
            var user = new AppUser
            {
                Id = Guid.CreateVersion7(),
                PracticeId = practice,
                PersonId = person.Id,
                UserName = person.Name,
                LockoutEnabled = true,
            };
            Assert.True((await users.CreateAsync(user, Password)).Succeeded);
        }
        return true;
    }
}
