using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>What a stranger sees before anyone is known.</summary>
public sealed class FirstSightTests(ChromiumBrowser chromium)
{
    [Fact]
    public async Task Pages_for_nobody_in_particular_are_readable_without_script_and_clean_for_axe()
    {
        await using var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 10, 0));
        foreach (var screen in new[] { Pages.Desk, Pages.Tablet, Pages.Phone })
        {
            var page = await chromium.DeviceAsync(site, screen);
            foreach (var path in new[] { "/sign-in", "/my-hair/ask-link", "/my-hair/open-link?token=x", "/refused", "/error" })
            {
                await page.OpenAsync(path);
                Assert.NotEmpty(await page.Locator("h1").InnerTextAsync());
                await page.PictureAsync($"{path.Trim('/').Replace('/', '-').Split('?')[0]}-{screen.Width}");
                await page.NothingForAxeAsync();
            }
            await page.Context.CloseAsync();
        }
    }
}
