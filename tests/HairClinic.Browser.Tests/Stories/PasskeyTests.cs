using System.Text.Json.Nodes;
using HairClinic.Web.Accounts;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>
/// One's own way in, in a real browser whose device is Chromium's virtual authenticator (Web Authentication, section 11): a passkey is
/// made, opens without a name, proves who one is, opens while the password is locked, and is removed.
/// </summary>
public sealed class PasskeyTests(ChromiumBrowser chromium)
{
    private static readonly string[] Own =
    [
        "/my-sign-in",
        "/my-sign-in/passkeys",
        "/my-sign-in/add-authenticator-app",
        "/change-password",
        "/step-up",
    ];

    [Fact]
    public async Task A_passkey_is_made_opens_proves_and_goes()
    {
        await using var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 10, 0));
        var owner = await OneOwner.LayAsync(site);
        var page = await DeviceAsync(site);
        var complaints = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                complaints.Add(message.Text);
        };

        // By password, which can be looked at.
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name or e-mail").FillAsync(OneOwner.Name);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(OneOwner.Password);
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
        await LockAsync(site, owner);
        await SignOutAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await page.LeaveAsync("/sign-in");

        // Ten minutes later it proves who one is.
        site.Clock.Advance(SessionStore.Fresh);
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
        site.Use(context);
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

    private static Task<int> LockAsync(Site site, OneOwner owner) =>
        owner.DoAsync(
            site,
            db => db.Users.ExecuteUpdateAsync(set => set.SetProperty(u => u.LockoutEnd, DateTimeOffset.MaxValue.AddYears(-1)))
        );
}
