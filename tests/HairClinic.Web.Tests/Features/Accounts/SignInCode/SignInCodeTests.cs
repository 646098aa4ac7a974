using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts.SignInCode;

public sealed class SignInCodeTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_code_opens_once()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var app = await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));
        // The one that set it up is used already.
        await RefusedAsync(await app.SignInAsync(site.Browser(), app.Code));
        site.Clock.Advance(Duration.FromSeconds(30));

        EmptySite.LeadsTo("/", await app.SignInAsync(site.Browser(), app.Code));
        await RefusedAsync(await app.SignInAsync(site.Browser(), app.Code));

        Assert.Contains(SignInWay.PasswordAndCode, await site.DoAsync((_, db) => db.SignInSessions.Select(s => s.Way).ToListAsync(Cancel)));
    }

    [Fact]
    public async Task A_recovery_code_opens_once_however_it_is_typed()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var app = await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));
        var typed = app.Recovery[3].ToUpperInvariant().Replace('-', ' ');

        EmptySite.LeadsTo("/", await app.SignInAsync(site.Browser(), typed));
        await RefusedAsync(await app.SignInAsync(site.Browser(), app.Recovery[3]));
        EmptySite.LeadsTo("/", await app.SignInAsync(site.Browser(), app.Recovery[4]));

        var page = await (await site.SignInWithAsync(app, app.Recovery[5])).GetStringAsync("/my-sign-in", Cancel);
        Assert.Matches(@"Recovery codes left</dt>\s*<dd[^>]*>7 ", page);
    }

    [Fact]
    public async Task Whoever_typed_no_password_is_not_asked_for_a_code()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        EmptySite.LeadsTo("/sign-in", await site.Browser().GetAsync("/sign-in-code", Cancel));
    }

    [Fact]
    public async Task The_password_alone_opens_no_page()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));

        var browser = await site.SignInAsync(StaffRole.Owner);

        Assert.Equal(HttpStatusCode.Redirect, (await browser.GetAsync("/my-sign-in", Cancel)).StatusCode);
    }

    private static async Task RefusedAsync(HttpResponseMessage answer)
    {
        Assert.Equal((HttpStatusCode.OK, null), (answer.StatusCode, answer.Headers.Location));
        Assert.Contains("This code does not open", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }
}
