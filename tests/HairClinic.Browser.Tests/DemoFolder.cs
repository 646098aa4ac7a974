using System.Linq.Expressions;
using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo;
using HairClinic.Web.Learning;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests;

/// <summary>The demo practice, filled once for all stories: a site on it begins with a copy of its own.</summary>
public sealed class DemoFolder : IAsyncDisposable
{
    /// <summary>When every story on the demo takes place: on a Wednesday morning.</summary>
    public static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 20);

    private readonly Lazy<Task<DirectoryInfo>> _filled;

    public DemoFolder() => _filled = new(FillAsync);

    /// <summary>The demo's practice, on every site that was opened.</summary>
    public Guid Practice { get; private set; }

    public async Task<Site> OpenSiteAsync() => await Site.OpenAsync(Now, like: await _filled.Value);

    /// <summary>Somebody of the demo's at their *Due*.</summary>
    public static async Task<IPage> SignInAsync(ChromiumBrowser chromium, Site site, string who, (int, int) screen, float timeout)
    {
        var page = await chromium.DeviceAsync(site, screen);
        page.SetDefaultTimeout(timeout);
        await page.SignInToDemoAsync(who);
        await page.ArriveAsync("/due");
        return page;
    }

    /// <summary>The address in a letter that lets a client in, once.</summary>
    public Task<string> LinkAsync(Site site, Expression<Func<Client, bool>> whose) =>
        site.DoAsync(
            Practice,
            async (services, db) =>
            {
                var client = await db.Clients.SingleAsync(whose);
                services.GetRequiredService<SignInLinkStore>().AddLinkAndLetter(db, client.Id, client.Email!);
                var letter = db.ChangeTracker.Entries<WorkItem>().Single().Entity.Body;
                await db.SaveChangesAsync();
                return Regex.Match(letter, @"/my-hair/open-link\?token=[\w-]+").Value;
            }
        );

    public async ValueTask DisposeAsync()
    {
        if (_filled.IsValueCreated)
            (await _filled.Value).Delete(recursive: true);
    }

    private async Task<DirectoryInfo> FillAsync()
    {
        var site = await Site.OpenAsync(Now);
        Practice = (await site.Services.GetRequiredService<DemoSeeder>().FillAsync(CancellationToken.None))!.PracticeId;
        await RestAsync(site);
        // The loops ran while it was filled: the first calculation may have read half a book.
        await site.ReadAsync(Practice, db => RecalculationQueue.RequestAsync(db, askedBy: null, Now, CancellationToken.None));
        await RestAsync(site);
        return await site.CloseAsync();
    }

    /// <summary>Until all is done that the program does by itself once there is a practice: else every site of a story did it anew.</summary>
    private async Task RestAsync(Site site)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(3));
        while (!await site.ReadAsync(Practice, RestsAsync))
            await Task.Delay(250, patience.Token);
    }

    private static async Task<bool> RestsAsync(ClinicDb db) =>
        await db.Recalculations.AnyAsync(r => r.EndedAt != null)
        && !await db.Recalculations.AnyAsync(r => r.EndedAt == null)
        && !await db.WorkItems.AnyAsync(w => w.DoneAt == null && w.NotBefore <= Now);
}
