using System.Text.Json.Nodes;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Practices;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>
/// One's own way in, in a real browser whose device is Chromium's virtual authenticator (Web Authentication, section 11): a passkey is
/// made, opens without a name, proves who one is, opens while the password is locked, and is removed.
/// </summary>
public sealed class PasskeyTests(ChromiumBrowser chromium)
{
    private const string Password = "long lavender evenings";

    private static readonly string[] Own = ["/my-sign-in", "/my-sign-in/passkeys", "/my-sign-in/add-codes", "/change-password", "/step-up"];

    [Fact]
    public async Task A_passkey_is_made_opens_proves_and_goes()
    {
        await using var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 10, 0));
        var practice = Guid.CreateVersion7();
        await site.Services.GetRequiredService<PracticeJobs>().RunAsync(practice, "story", services => LayAsync(services, practice));
        var page = await DeviceAsync(site);
        var complaints = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                complaints.Add(message.Text);
        };

        // By password, which can be looked at.
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name or e-mail").FillAsync("ottilie");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        await page.GetByLabel("Show what I type").CheckAsync();
        Assert.Equal("text", await page.GetByLabel("Password", new() { Exact = true }).GetAttributeAsync("type"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.LeaveAsync("/sign-in");

        await page.GotoAsync("/my-sign-in/passkeys");
        await page.GetByLabel("Name").FillAsync("Phone");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a passkey" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove Phone" }).WaitForAsync();
        Assert.Empty(complaints);
        await LookAtAsync(page, Own);

        // Without a name, also while the password is locked.
        await LockAsync(site, practice);
        await SignOutAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await page.LeaveAsync("/sign-in");

        // Ten minutes later it proves who one is.
        site.Clock.Advance(SessionBook.Fresh);
        await page.GotoAsync("/my-sign-in/passkeys");
        await page.ArriveAsync("/step-up?*");
        await page.GetByRole(AriaRole.Button, new() { Name = "Use a passkey" }).ClickAsync();
        await page.ArriveAsync("/my-sign-in/passkeys");
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove Phone" }).ClickAsync();
        await page.GetByText("There is none yet.").WaitForAsync();

        // Removed here, it opens nothing, though the device still has it.
        await SignOutAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await page.GetByText("This passkey does not open anything here.").WaitForAsync();
    }

    private static async Task SignOutAsync(IPage page)
    {
        await page.GotoAsync("/my-sign-in");
        await page.Locator(".person summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.ArriveAsync("/sign-in");
    }

    private static async Task LookAtAsync(IPage page, string[] paths)
    {
        foreach (var screen in new[] { Pages.Desk, Pages.Tablet, Pages.Phone })
        {
            await page.SetViewportSizeAsync(screen.Width, screen.Height);
            foreach (var path in paths)
            {
                await page.GotoAsync(path);
                Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{path} {screen.Width}");
                await page.PictureAsync($"{path.Trim('/').Replace('/', '-')}-{screen.Width}");
                await page.NothingForAxeAsync();
            }
        }
    }

    /// <summary>A device with a lock of its own. Passkeys belong to a name, so it comes by localhost and not by number.</summary>
    private async Task<IPage> DeviceAsync(Site site)
    {
        var context = await chromium.Browser.NewContextAsync(new() { BaseURL = $"http://localhost:{site.Address.Port}", Locale = "en-GB" });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        var device = await context.NewCDPSessionAsync(page);
        await device.SendAsync("WebAuthn.enable");
        await device.SendAsync(
            "WebAuthn.addVirtualAuthenticator",
            new()
            {
                ["options"] = new JsonObject
                {
                    ["protocol"] = "ctap2",
                    ["transport"] = "internal",
                    ["hasResidentKey"] = true,
                    ["hasUserVerification"] = true,
                    ["isUserVerified"] = true,
                    ["automaticPresenceSimulation"] = true,
                },
            }
        );
        return page;
    }

    private static async Task<bool> LayAsync(IServiceProvider services, Guid practice)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        db.Practices.Add(new PracticeRow(practice));
        var scene = new Scene(db, Instant.FromUtc(2027, 2, 3, 10, 0)).LayPractice("Practice under test");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        var owner = scene.Hire("Ottilie Vane", StaffRole.Owner, salon);
        await db.SaveChangesAsync();
        var user = new AppUser
        {
            Id = Guid.CreateVersion7(),
            PracticeId = practice,
            PersonId = owner.Id,
            UserName = "ottilie",
            LockoutEnabled = true,
        };
        Assert.True((await services.GetRequiredService<UserManager<AppUser>>().CreateAsync(user, Password)).Succeeded);
        return true;
    }

    private static Task<int> LockAsync(Site site, Guid practice) =>
        site
            .Services.GetRequiredService<PracticeJobs>()
            .RunAsync(
                practice,
                "story",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await db.Users.ExecuteUpdateAsync(set =>
                        set.SetProperty(u => u.LockoutEnd, DateTimeOffset.MaxValue.AddYears(-1))
                    );
                }
            );
}
