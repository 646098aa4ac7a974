using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests;

/// <summary>The demo practice on a site of its own, filled once for the stories of one class.</summary>
public sealed class DemoSite(DemoFolder demo) : IAsyncLifetime
{
    public Site Site { get; private set; } = null!;

    public async ValueTask InitializeAsync() => Site = await demo.OpenSiteAsync();

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    /// <summary>What is in the book, past anybody's fence.</summary>
    public Task<T> ReadAsync<T>(Func<ClinicDb, Task<T>> read) => Site.ReadAsync(demo.Practice, read);

    /// <summary>A visit of today whose rebond is not logged yet, and whose client told of a lift: the visit and the bond that they wear.</summary>
    public Task<(Guid Visit, Guid Bond)> LiftToldAsync() =>
        ReadAsync(async db =>
        {
            var now = Site.Clock.GetCurrentInstant();
            var rebonds = db.ServiceKinds.Where(s => s.Purpose == ServicePurpose.Rebond).Select(s => s.Id);
            var found = await db
                .Visits.Where(v => v.State != VisitState.Done && v.State != VisitState.Cancelled && v.State != VisitState.DidNotCome)
                .Where(v => v.StartsAt > now - Duration.FromHours(6) && v.StartsAt < now + Duration.FromHours(10))
                .Where(v => rebonds.Contains(v.ServiceKindId))
                .Where(v => !db.VisitRecords.Any(r => r.VisitId == v.Id))
                .OrderBy(v => v.StartsAt)
                .Select(v => new
                {
                    Visit = v,
                    Bond = db.Bonds.FirstOrDefault(b => b.ClientId == v.ClientId && b.RemovedOn == null && b.Lift == null),
                })
                .FirstAsync(x => x.Bond != null);
            var bond = await db.Bonds.SingleAsync(b => b.Id == found.Bond!.Id);
            var today = now.InZone(DateTimeZoneProviders.Tzdb["Europe/London"]).Date;
            bond.ReportLift(new(today, null, null, SpotFixed: false));
            await db.SaveChangesAsync();
            return (found.Visit.Id, bond.Id);
        });

    /// <param name="who">The name before the at sign of the demo's sign-ins.</param>
    public async Task<IPage> SignInAsync(ChromiumBrowser chromium, string who)
    {
        var page = await chromium.DeviceAsync(Site, Pages.Desk);
        page.SetDefaultTimeout(60_000);
        await page.SignInToDemoAsync(who);
        return page;
    }
}
