using HairClinic.Browser.Tests;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Demo;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.ScreenDrill;

/// <summary>The demo practice on a site and a database of the drill's own, on loopback, and a browser to look at it with.</summary>
internal sealed class Practice : IAsyncDisposable
{
    private readonly Guid _practice;
    private readonly IPlaywright _playwright;
    private readonly IBrowser _browser;

    private Practice(Site site, Guid practice, IPlaywright playwright, IBrowser browser) =>
        (Site, _practice, _playwright, _browser) = (site, practice, playwright, browser);

    public Site Site { get; }

    public static async Task<Practice> OpenAsync()
    {
        // Where the program's own files lie: beside the drill.
        Environment.SetEnvironmentVariable("ASPNETCORE_TEST_CONTENTROOT_HAIRCLINIC_WEB", AppContext.BaseDirectory);
        var site = await Site.OpenAsync(Instant.FromUtc(2027, 2, 3, 10, 20));
        var filled = await site.Services.GetRequiredService<DemoSeeder>().FillAsync(CancellationToken.None);
        var playwright = await Playwright.CreateAsync();
        var browser = await Chromium.LaunchAsync(playwright);
        return new(site, filled!.PracticeId, playwright, browser);
    }

    public Task<T> ReadAsync<T>(Func<ClinicDb, Task<T>> read) => Site.ReadAsync(_practice, read);

    /// <summary>What the parameters of routes stand for, so that most of them open.</summary>
    public Task<Dictionary<string, Guid>> IdsAsync() =>
        ReadAsync(async db =>
        {
            var now = Site.Clock.GetCurrentInstant();
            var rebonds = db.ServiceKinds.Where(s => s.Purpose == ServicePurpose.Rebond).Select(s => s.Id);
            var visit = await db
                .Visits.Where(v =>
                    v.State == VisitState.Booked && v.StartsAt < now + Duration.FromHours(10) && rebonds.Contains(v.ServiceKindId)
                )
                .Where(v => v.PersonId != null && db.Salons.Any(s => s.Id == v.SalonId && s.Name == DemoPractice.Lane.Name))
                .Where(v => db.Bonds.Any(b => b.ClientId == v.ClientId && b.RemovedOn == null))
                .OrderByDescending(v => v.StartsAt)
                .FirstAsync();
            return await RouteIds.OfAsync(db, visit, visit.ClientId);
        });

    public async Task<IPage> SignInAsync(string who)
    {
        var context = await _browser.NewContextAsync(new() { BaseURL = Site.Address.ToString(), Locale = "en-GB" });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        await page.SignInToDemoAsync(who);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
        await Site.DisposeAsync();
    }
}
