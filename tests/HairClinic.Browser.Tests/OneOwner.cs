using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests;

/// <summary>A practice of one salon whose owner can sign in, and one client.</summary>
public sealed record OneOwner(Guid PracticeId, Guid PersonId)
{
    public const string Name = "ottilie";
    public const string Password = "long lavender evenings";

    public static async Task<OneOwner> LayAsync(Site site)
    {
        var practice = Guid.CreateVersion7();
        return await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(practice, "story", services => LayAsync(services, practice));
    }

    /// <summary>Does something past the pages, in the practice's own book.</summary>
    public Task<int> DoAsync(Site site, Func<Web.Data.ClinicDb, Task<int>> work) => site.DoAsync(PracticeId, (_, db) => work(db));

    public static async Task SignInAsync(IPage page)
    {
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Name or e-mail").FillAsync(Name);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.LeaveAsync("/sign-in");
    }

    private static async Task<OneOwner> LayAsync(IServiceProvider services, Guid practice)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        db.Practices.Add(new PracticeRow(practice));
        var scene = new Scene(db, Instant.FromUtc(2027, 2, 3, 10, 0)).AddPractice("Practice under test");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        var owner = scene.Hire("Ottilie Vane", StaffRole.Owner, salon);
        scene.AddClient("C-1", "Ada Fenwick", salon);
        await db.SaveChangesAsync();
        var user = new AppUser
        {
            Id = Guid.CreateVersion7(),
            PracticeId = practice,
            PersonId = owner.Id,
            UserName = Name,
            LockoutEnabled = true,
        };
        Assert.True((await services.GetRequiredService<UserManager<AppUser>>().CreateAsync(user, Password)).Succeeded);
        return new OneOwner(practice, owner.Id);
    }
}
