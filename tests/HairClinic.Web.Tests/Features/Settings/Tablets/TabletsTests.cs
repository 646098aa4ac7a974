using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Accounts;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.Settings.Tablets;

public sealed class TabletsTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Ending_a_lost_tablet_puts_everybody_out_at_once()
    {
        await using var at = await TabletSite.OpenAsync(server, StaffRole.Manager, StaffRole.Stylist);
        await at.BeginAsync(StaffRole.Stylist);
        var manager = await at.Site.SignInAsync(StaffRole.Manager);
        Assert.Contains(TabletSite.Name, await manager.GetStringAsync("/practice/tablets", Cancel), StringComparison.Ordinal);
        var id = await at.Site.DoAsync((_, db) => db.Tablets.Select(t => t.Id).SingleAsync(Cancel));

        var fields = new Dictionary<string, string> { ["tablet"] = id.ToString() };
        EmptySite.LeadsTo("/practice/tablets", await AccountsSite.PostAsync(manager, "/practice/tablets", "/practice/tablets/end", fields));

        Assert.False(await at.IsAtWorkAsync());
        EmptySite.LeadsTo("/sign-in", await at.Tablet.GetAsync("/switch-person", Cancel));
        Assert.DoesNotContain(TabletSite.Name, await manager.GetStringAsync("/practice/tablets", Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_practices_tablet_is_not_found()
    {
        await using var site = await Security.ClinicSite.OpenAsync(server);
        var owner = await site.SignInAsync(Security.ClinicSite.NameOf(site.Foreign.Staff[StaffRole.Owner]));
        await TabletSite.MakeAsync(await site.SignInAsync(Security.ClinicSite.NameOf(site.Here.Staff[StaffRole.Owner])), "Ours alone");
        Assert.DoesNotContain("Ours alone", await owner.GetStringAsync("/practice/tablets", Cancel), StringComparison.Ordinal);

        var fields = new Dictionary<string, string> { ["tablet"] = Guid.CreateVersion7().ToString() };
        var answer = await AccountsSite.PostAsync(owner, "/practice/tablets", "/practice/tablets/end", fields);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}
