using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using NetVips;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>Large files, chosen by hand: a photo from a sensor of 48 megapixels, one that is too large, and a sheet of nearly 20 MB.</summary>
public sealed class LargeFilesTests(ChromiumBrowser chromium, DemoFolder demo)
{
    [Fact]
    public async Task A_large_photo_and_a_large_sheet_go_in_and_a_photo_too_large_is_told_at_its_field_before_it_is_sent()
    {
        await using var site = await demo.OpenSiteAsync();
        var page = await chromium.DeviceAsync(site, Pages.Desk);
        page.SetDefaultTimeout(120_000);
        await page.SignInToDemoAsync("owner");
        await page.ArriveAsync("/due");

        await AddPhotoAsync(page, await ClientAsync(site, demo.Practice));
        await BringAsync(page);
    }

    private static async Task AddPhotoAsync(IPage page, Guid client)
    {
        await page.GotoAsync($"/clients/{client}/photos");
        var picture = page.GetByLabel("Picture");
        await page.GetByText("The client agreed to this photo today").ClickAsync();
        await picture.SetInputFilesAsync(File("photo.jpg", "image/jpeg", new byte[15 * 1024 * 1024 + 1]));
        await page.GetByText("A photo has at most 15 megabytes").WaitForAsync();
        await page.NothingForAxeAsync();
        var posts = 0;
        page.Request += (_, request) =>
            posts += request.Method == "POST" && request.Url.EndsWith("/photos", StringComparison.Ordinal) ? 1 : 0;
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the photo" }).ClickAsync();
        await Assertions.Expect(picture).ToBeFocusedAsync();
        Assert.Equal(0, posts);

        await picture.SetInputFilesAsync(File("photo.jpg", "image/jpeg", Noise()));
        await Assertions.Expect(page.GetByText("A photo has at most 15 megabytes")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the photo" }).ClickAsync();
        await page.Locator(".shots img").First.WaitForAsync();
        Assert.Equal(1, posts);
        await page.PictureAsync("large-photo");
    }

    // Its columns are asked about once all of it was read: 150,000 rows, 19 MB.
    private static async Task BringAsync(IPage page)
    {
        await page.OpenAsync("/practice/binder/import");
        var sheet = new StringBuilder("code,name,note\n");
        for (var row = 0; row < 150_000; row++)
            sheet.Append($"BIG-{row},Somebody {row},").Append('x', 100).Append('\n');
        var file = Encoding.UTF8.GetBytes(sheet.ToString());
        Assert.InRange(file.Length, 18 * 1024 * 1024, 20 * 1024 * 1024);
        await page.GetByLabel("CSV file").SetInputFilesAsync(File("clients.csv", "text/csv", file));

        await page.GetByRole(AriaRole.Heading, new() { Name = "Columns" }).WaitForAsync();
    }

    private static FilePayload File(string name, string type, byte[] content) =>
        new()
        {
            Name = name,
            MimeType = type,
            Buffer = content,
        };

    /// <summary>15 MB of noise, 8064 × 6048 points.</summary>
    private static byte[] Noise()
    {
        using var noise = Image.Gaussnoise(8064, 6048, sigma: 20, mean: 128, seed: 7);
        using var grey = noise.Cast(Enums.BandFormat.Uchar);
        using var colour = grey.Bandjoin(grey, grey).Copy(interpretation: Enums.Interpretation.Srgb);
        var file = colour.JpegsaveBuffer(q: 74);
        Assert.InRange(file.Length, 15_000_000, 15 * 1024 * 1024);
        return file;
    }

    private static Task<Guid> ClientAsync(Site site, Guid practice) =>
        site.DoAsync(
            practice,
            async (_, db) =>
            {
                return await db.Clients.Where(c => c.Code == "C-0002").Select(c => c.Id).SingleAsync();
            }
        );
}
