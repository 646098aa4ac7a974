using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Shelf;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>Somebody comes with itching skin: the unit comes off and stays off, and everybody knows until when.</summary>
public sealed class TakeDownTests(ChromiumBrowser chromium, DemoSite demo) : IClassFixture<DemoSite>
{
    [Fact]
    public async Task A_unit_comes_off_after_a_reaction_and_the_card_says_until_when()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        var (visit, bond) = await demo.LiftToldAsync();
        await demo.ReadAsync(db =>
        {
            db.Products.Add(new Product(Guid.CreateVersion7(), "Remover, citrus", ProductKind.Remover));
            return db.SaveChangesAsync();
        });
        await page.OpenAsync($"/visits/{visit}/log-rebond");
        await page.GetByRole(AriaRole.Link, new() { Name = "Take down only" }).ClickAsync();
        await page.ArriveAsync("/visits/*/log-take-down");
        // The page before has the same words on it, and stands for a moment longer than its address.
        await page.GetByRole(AriaRole.Heading, new() { Name = "Take down only" }).WaitForAsync();
        await page.ReadyAsync();
        await page.Locator("label.tap", new() { HasText = "Skin reaction" }).ClickAsync();
        await page.GetByText("No, sound").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add what it was taken down with" }).ClickAsync();
        await page.GetByLabel("Product").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByLabel("No bond before").FillAsync("2099-05-24");
        foreach (var (width, height) in new[] { (1024, 768), (360, 800) })
        {
            await page.SetViewportSizeAsync(width, height);
            await page.PictureAsync($"take-down-{width}");
            await page.NothingForAxeAsync();
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the take-down" }).ClickAsync();
        await page.GetByText("nothing falls due").WaitForAsync();
        await page.GetByText("ask them to see a physician").WaitForAsync();
        await page.PictureAsync("take-down-saved-360");
        await page.NothingForAxeAsync();

        var taken = await demo.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == bond));
        Assert.Equal(RemovalReason.Reaction, taken.RemovedBecause);
        Assert.Equal(
            UnitState.Resting,
            await demo.ReadAsync(db => db.HairSystems.Where(u => u.Id == taken.HairSystemId).Select(u => u.State).SingleAsync())
        );
        await page.SetViewportSizeAsync(1024, 768);
        await page.OpenAsync($"/clients/{taken.ClientId}/card");
        await page.GetByText("No bond before").WaitForAsync();
        await page.GetByText("Skin reaction").WaitForAsync();
        await page.PictureAsync("take-down-card-1024");
    }
}
