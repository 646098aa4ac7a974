using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts.LockTablet;

public sealed class LockTabletTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_locked_sign_in_reads_nothing()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        var (full, _) = await NewestAsync(at);
        Assert.True(await ReadsAsync(at, full));

        EmptySite.LeadsTo("/switch-person", await at.LockAsync());

        Assert.False(await ReadsAsync(at, full));
        EmptySite.LeadsTo("/switch-person", await at.Tablet.GetAsync("/due", Cancel));
        // The one that came by PIN reads, until it is locked in its turn; the full one stays locked all the while.
        await at.TypeAsync(StaffRole.Owner);
        var (byPin, way) = await NewestAsync(at);
        Assert.Equal(SignInWay.Pin, way);
        Assert.True(await ReadsAsync(at, byPin));
        Assert.False(await ReadsAsync(at, full));
        await at.LockAsync();
        Assert.False(await ReadsAsync(at, byPin));
    }

    [Fact]
    public async Task Untouched_it_locks_by_itself_and_each_touch_puts_that_off()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        var (full, _) = await NewestAsync(at);
        for (var touched = 0; touched < 3; touched++)
        {
            at.Site.Clock.Advance(Duration.FromMinutes(2));
            Assert.Equal(HttpStatusCode.NoContent, (await TouchAsync(at)).StatusCode);
        }
        at.Site.Clock.Advance(Duration.FromMinutes(3));

        Assert.False(await ReadsAsync(at, full));
        Assert.False(await at.IsAtWorkAsync());
        Assert.True(await at.OpensAsync(StaffRole.Owner));
    }

    [Fact]
    public async Task An_open_screen_that_connects_anew_is_nobodys_touch()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        at.Site.Clock.Advance(Duration.FromMinutes(2));
        await at.Tablet.PostAsync("/_blazor/negotiate?negotiateVersion=1", null, Cancel);
        at.Site.Clock.Advance(Duration.FromMinutes(1));

        Assert.False(await at.IsAtWorkAsync());
    }

    [Fact]
    public async Task Whoever_signs_in_fully_locks_the_one_before()
    {
        await using var at = await TabletSite.OpenAsync(server, StaffRole.Stylist);
        await at.BeginAsync(StaffRole.Owner);
        var (owners, _) = await NewestAsync(at);

        await at.SignInFullyAsync(StaffRole.Stylist);

        Assert.False(await ReadsAsync(at, owners));
        Assert.True(await at.ListsAsync(StaffRole.Owner));
    }

    [Fact]
    public async Task A_full_sign_in_that_is_ended_from_elsewhere_ends_what_stands_on_it()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        var (full, _) = await NewestAsync(at);
        await at.LockAsync();
        await at.TypeAsync(StaffRole.Owner);
        var (byPin, _) = await NewestAsync(at);
        var elsewhere = await at.Site.SignInAsync(StaffRole.Owner);
        Assert.Contains(TabletSite.Name, await elsewhere.GetStringAsync("/my-sign-in", Cancel), StringComparison.Ordinal);

        var fields = new Dictionary<string, string> { ["place"] = full.ToString() };
        await AccountsSite.PostAsync(elsewhere, "/my-sign-in", "/my-sign-in/end-session", fields);

        Assert.False(await ReadsAsync(at, byPin));
        Assert.False(await at.IsAtWorkAsync());
        Assert.False(await at.ListsAsync(StaffRole.Owner));
    }

    [Fact]
    public async Task Elsewhere_than_at_a_tablet_there_is_nothing_to_lock()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        var page = await browser.GetStringAsync("/my-sign-in", Cancel);
        Assert.DoesNotContain("Lock now", page, StringComparison.Ordinal);

        await AccountsSite.PostAsync(browser, "/my-sign-in", "/lock-tablet");

        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/my-sign-in", Cancel)).StatusCode);
    }

    // As the script does: the token of the page goes in a header.
    private static async Task<HttpResponseMessage> TouchAsync(TabletSite at)
    {
        using var touch = new HttpRequestMessage(HttpMethod.Post, "/lock-tablet/touch");
        var page = await at.Tablet.GetStringAsync("/my-sign-in", Cancel);
        var form = new AngleSharp.Html.Parser.HtmlParser().ParseDocument(page);
        touch.Headers.Add(
            "RequestVerificationToken",
            form.QuerySelector("[data-lock-after] input[name=__RequestVerificationToken]")!.GetAttribute("value")
        );
        return await at.Tablet.SendAsync(touch, Cancel);
    }

    private static async Task<(Guid Id, SignInWay Way)> NewestAsync(TabletSite at)
    {
        var newest = await at.Site.DoAsync(
            (_, db) => db.SignInSessions.AsNoTracking().Where(s => s.TabletId != null && s.EndedAt == null).ToListAsync(Cancel)
        );
        var one = newest.OrderByDescending(s => s.FullId is not null).First();
        return (one.Id, one.Way);
    }

    // What an open screen of that sign-in would find, whatever its page still believes.
    private static async Task<bool> ReadsAsync(TabletSite at, Guid session)
    {
        var actor = new PersonActor(
            at.Site.PracticeId,
            await at.PersonAsync(StaffRole.Owner),
            StaffRole.Owner,
            [at.Site.Salon.Id],
            null,
            session
        );
        try
        {
            return await at
                .Site.Service<PracticeJobRunner>()
                .RunAsAsync(
                    actor,
                    async services =>
                    {
                        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                        return await db.Salons.AnyAsync(Cancel);
                    }
                );
        }
        catch (StaleActorException)
        {
            return false;
        }
    }
}
