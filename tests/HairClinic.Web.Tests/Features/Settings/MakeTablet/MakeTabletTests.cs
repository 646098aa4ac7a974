using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Tests.Features.Accounts;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.Settings.MakeTablet;

public sealed class MakeTabletTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Owner_and_manager_make_one_by_a_cookie_scripts_cannot_read_whose_token_is_kept_as_a_hash_only()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Manager]);
        var browser = await site.SignInAsync(StaffRole.Manager);

        var made = await TabletSite.MakeAsync(browser);

        var cookie = made.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("__Host-tablet=", StringComparison.Ordinal));
        Assert.Matches("(?i); httponly", cookie);
        Assert.Matches("(?i); secure", cookie);
        Assert.Matches("(?i); samesite=lax", cookie);
        var token = Microsoft.AspNetCore.WebUtilities.WebEncoders.Base64UrlDecode(cookie.Split('=', 2)[1].Split(';')[0].Split('.')[1]);
        var kept = await site.DoAsync((_, db) => db.Tablets.Select(t => t.TokenHash).SingleAsync(Cancel));
        Assert.Equal(System.Security.Cryptography.SHA256.HashData(token), kept);
        // Whoever made it is out, and signs in as everybody else does.
        EmptySite.LeadsTo("/switch-person", await browser.GetAsync("/practice/tablets", Cancel));
    }

    [Fact]
    public async Task Nobody_else_makes_one_and_it_takes_a_fresh_proof()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Manager, StaffRole.Stylist]);
        var stylist = await site.SignInAsync(StaffRole.Stylist);
        Assert.StartsWith(
            "/refused",
            (await stylist.GetAsync("/practice/make-tablet", Cancel)).Headers.Location!.PathAndQuery,
            StringComparison.Ordinal
        );
        var manager = await site.SignInAsync(StaffRole.Manager);
        site.Clock.Advance(SessionStore.Fresh);

        EmptySite.LeadsTo("/step-up?return=%2Fpractice%2Fmake-tablet", await manager.GetAsync("/practice/make-tablet", Cancel));
    }

    [Fact]
    public async Task One_that_is_one_already_is_not_made_another()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.SignInFullyAsync(StaffRole.Owner);

        var page = await at.Tablet.GetAsync("/practice/make-tablet", Cancel);

        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Contains("already", await page.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }
}
