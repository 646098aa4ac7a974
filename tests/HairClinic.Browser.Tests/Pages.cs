using HairClinic.Web.Features.Settings;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>What every story does with a page.</summary>
public static class Pages
{
    public static readonly (int Width, int Height) Desk = (1280, 800);
    public static readonly (int Width, int Height) Tablet = (1024, 768);
    public static readonly (int Width, int Height) Phone = (360, 800);

    /// <summary>A device of its own: its cookies are nobody else's.</summary>
    public static async Task<IPage> DeviceAsync(this ChromiumBrowser chromium, Site site, (int Width, int Height) screen)
    {
        var context = await chromium.Browser.NewContextAsync(
            new()
            {
                BaseURL = site.Address.ToString(),
                ViewportSize = new() { Width = screen.Width, Height = screen.Height },
                Locale = "en-GB",
            }
        );
        site.Use(context);
        return await context.NewPageAsync();
    }

    /// <summary>Waits until a tap on the page is heard: before that it is only drawn.</summary>
    public static Task ReadyAsync(this IPage page) =>
        page.Locator("[data-interactive=true]").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });

    /// <summary>From now on pages are drawn and do not become live before the task that is given back may end.</summary>
    public static async Task<TaskCompletionSource> HoldAsync(this IPage page)
    {
        var live = new TaskCompletionSource();
        await page.RouteAsync(
            "**/_blazor/negotiate*",
            async route =>
            {
                await live.Task;
                await route.ContinueAsync();
            }
        );
        return live;
    }

    public static async Task TapToAsync(this IPage page, ILocator what, string path)
    {
        await what.ClickAsync();
        await page.ArriveAsync(path);
    }

    /// <summary>Types into a field that searches, and takes the first found.</summary>
    public static async Task PickAsync(this IPage page, string name, string typed)
    {
        var field = page.GetByRole(AriaRole.Combobox, new() { Name = name });
        await field.ClickAsync();
        await field.PressSequentiallyAsync(typed);
        await page.Locator("[role=listbox] [role=option]").First.ClickAsync();
    }

    public static Task OpenWelcomeAsync(this IPage page, Site site) =>
        page.OpenAsync("/first-run/create-practice?code=" + site.Services.GetRequiredService<SetupCode>().Value);

    /// <summary>Fills in the guide's welcome, which is open, and goes on to the first salon.</summary>
    public static async Task BeginAsync(this IPage page)
    {
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Linden Practice");
        await page.GetByLabel("Your name").FillAsync("Odette Vance");
        await page.GetByLabel("Name to sign in with").FillAsync("owner@practice.example");
        await page.GetByLabel("Password").FillAsync("a long enough phrase");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await page.ArriveAsync("/first-run/first-salon");
        await page.ReadyAsync();
    }

    public static async Task OpenAsync(this IPage page, string path)
    {
        await page.GotoAsync(path);
        if (await page.Locator("[data-interactive]").CountAsync() > 0)
            await page.ReadyAsync();
    }

    /// <summary>Nothing for the accessibility checker, and no sideways scrolling, on a desk's, a tablet's and a phone's screen; a picture of each.</summary>
    public static async Task LookAtEveryWidthAsync(this IPage page, string name)
    {
        foreach (var (width, height) in new[] { Desk, Tablet, Phone })
        {
            await page.SetViewportSizeAsync(width, height);
            await page.LookAsync(name, width);
        }
        await page.SetViewportSizeAsync(Desk.Width, Desk.Height);
    }

    /// <summary>The same on the screen as it is.</summary>
    public static async Task LookAsync(this IPage page, string name, int width)
    {
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{name} is wider than {width}");
        await page.PictureAsync($"{name}-{width}");
        await page.NothingForAxeAsync();
    }

    /// <summary>Keeps a picture where <c>HAIRCLINIC_PICTURES</c> says, for people to look at.</summary>
    public static async Task PictureAsync(this IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("HAIRCLINIC_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
    }
}
