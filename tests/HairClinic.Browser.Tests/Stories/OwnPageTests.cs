using System.Text.RegularExpressions;
using HairClinic.Web.Features.MyHair;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>A client at home with their phone: sees when they are due, books, moves it, tells of a lift; with scripts and without.</summary>
public sealed class OwnPageTests(ChromiumBrowser chromium, DemoFolder demo)
{
    [Theory]
    [InlineData(true, "en-GB")]
    [InlineData(false, "en-GB")]
    [InlineData(false, "es-ES")]
    public async Task A_client_books_moves_and_tells_of_a_lift_on_their_phone(bool scripts, string language)
    {
        await using var site = await demo.OpenSiteAsync();
        var link = await demo.LinkAsync(site, c => c.Email == DemoLetters.CasimirsAddress);
        var words = language == "es-ES" ? Spanish : English;
        await using var context = await chromium.Browser.NewContextAsync(
            new()
            {
                BaseURL = site.Address.ToString(),
                ViewportSize = new() { Width = Pages.Phone.Width, Height = Pages.Phone.Height },
                Locale = language,
                JavaScriptEnabled = scripts,
            }
        );
        var page = await context.NewPageAsync();
        var asked = new List<string>();
        page.Request += (_, request) => asked.Add(request.Url);

        await page.GotoAsync(link);
        await page.GetByRole(AriaRole.Button, new() { Name = words["show"] }).ClickAsync();
        await page.ArriveAsync("/my-hair");
        Assert.Equal(language, await page.Locator("html").GetAttributeAsync("lang"));
        await LookAsync(page, scripts, $"own-page-{language}");

        await page.GetByRole(AriaRole.Link, new() { Name = words["choose"] }).ClickAsync();
        await page.Locator("label.tap").Filter(new() { HasText = words["rebond"] }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = words["free"] }).ClickAsync();
        await LookAsync(page, scripts, $"own-choose-{language}");
        // The last of the free times: the first may be too soon to be moved again.
        await page.Locator("form[method=post] label.tap").Last.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = words["book"] }).ClickAsync();
        await page.GetByText(words["booked"]).First.WaitForAsync();

        await page.GotoAsync("/my-hair");
        await page.GetByRole(AriaRole.Link, new() { Name = words["move"] }).ClickAsync();
        await page.Locator("form[method=post] label.tap").Last.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = words["there"] }).ClickAsync();
        await page.GetByText(words["moved"]).WaitForAsync();

        await page.GotoAsync("/my-hair/my-bond-has-lifted");
        await LookAsync(page, scripts, $"own-lift-{language}");
        await page.Locator("fieldset label.tap").First.ClickAsync();
        await page.Locator("label.zone").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = words["tell"] }).ClickAsync();
        await page.GetByText(words["next"]).WaitForAsync();

        foreach (
            var path in new[]
            {
                "aftercare",
                "preferences",
                "my-units",
                "whose-dates",
                "my-photos",
                "who-saw-mine",
                "my-consents",
                "take-my-data",
            }
        )
        {
            await page.GotoAsync($"/my-hair/{path}");
            await LookAsync(page, scripts, $"own-{path}-{language}");
        }
        Assert.DoesNotContain(
            asked,
            url => url.Contains("_framework", StringComparison.Ordinal) || url.Contains("_blazor", StringComparison.Ordinal)
        );
    }

    private static readonly Dictionary<string, string> English = new()
    {
        ["show"] = "Show my dates",
        ["choose"] = "Choose a time",
        ["rebond"] = "Rebond",
        ["free"] = "Show free times",
        ["book"] = "Book this time",
        ["booked"] = "You are booked",
        ["move"] = "Move it",
        ["there"] = "Move it there",
        ["moved"] = "Moved. You are booked on",
        ["tell"] = "Tell my salon",
        ["next"] = "The next free times:",
    };

    private static readonly Dictionary<string, string> Spanish = new()
    {
        ["show"] = "Ver mis fechas",
        ["choose"] = "Elegir hora",
        ["rebond"] = "Renovación",
        ["free"] = "Ver horas libres",
        ["book"] = "Reservar esta hora",
        ["booked"] = "Tiene hora",
        ["move"] = "Cambiarla",
        ["there"] = "Cambiarla a esa hora",
        ["moved"] = "Cambiada. Le esperamos el",
        ["tell"] = "Avisar a mi salón",
        ["next"] = "Las próximas horas libres:",
    };

    private static async Task LookAsync(IPage page, bool scripts, string name)
    {
        await page.PictureAsync(name);
        Assert.Equal(1, await page.Locator("h1").CountAsync());
        if (!scripts)
            return;
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"), $"{page.Url} is too wide");
        await page.NothingForAxeAsync();
    }
}
