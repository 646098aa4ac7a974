using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts.MySignIn;

public sealed class MySignInTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Ending_one_place_closes_it_at_once_and_leaves_the_others()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var (here, there, third) = (
            await site.SignInAsync(StaffRole.Owner),
            await site.SignInAsync(StaffRole.Owner),
            await site.SignInAsync(StaffRole.Owner)
        );
        Assert.Equal(HttpStatusCode.OK, await LookAsync(there));
        var page = new HtmlParser().ParseDocument(await here.GetStringAsync("/my-sign-in", Cancel));
        var others = page.QuerySelectorAll("input[name=place]").Select(i => i.GetAttribute("value")!).ToList();
        Assert.Equal(2, others.Count);

        // The newest is listed first: it is the third browser's.
        var fields = new Dictionary<string, string> { ["place"] = others[^1] };
        EmptySite.LeadsTo("/my-sign-in", await AccountsSite.PostAsync(here, "/my-sign-in", "/my-sign-in/end-session", fields));

        var after = new[] { await LookAsync(here), await LookAsync(there), await LookAsync(third) };
        Assert.Equal(HttpStatusCode.OK, after[0]);
        Assert.Single(after, HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task Ending_all_others_leaves_this_one_only()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, StaffRole.Stylist]);
        var (here, there, theirs) = (
            await site.SignInAsync(StaffRole.Owner),
            await site.SignInAsync(StaffRole.Owner),
            await site.SignInAsync(StaffRole.Stylist)
        );

        await AccountsSite.PostAsync(here, "/my-sign-in", "/my-sign-in/end-session");

        Assert.Equal(
            [HttpStatusCode.OK, HttpStatusCode.Redirect, HttpStatusCode.OK],
            new[] { await LookAsync(here), await LookAsync(there), await LookAsync(theirs) }
        );
    }

    [Fact]
    public async Task Somebody_elses_sign_in_cannot_be_ended()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, StaffRole.Stylist]);
        var (owner, stylist) = (await site.SignInAsync(StaffRole.Owner), await site.SignInAsync(StaffRole.Stylist));
        var place = await site.DoAsync(
            (_, db) =>
                db
                    .SignInSessions.Where(s => db.Users.Any(u => u.Id == s.UserId && u.UserName == "Owner"))
                    .Select(s => s.Id)
                    .SingleAsync(Cancel)
        );

        await AccountsSite.PostAsync(
            stylist,
            "/my-sign-in",
            "/my-sign-in/end-session",
            new Dictionary<string, string> { ["place"] = place.ToString() }
        );

        Assert.Equal(HttpStatusCode.OK, await LookAsync(owner));
    }

    [Fact]
    public async Task A_cookie_answers_to_the_sign_ins_limits()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        site.Clock.Advance(SignInSession.Idle - Duration.FromMinutes(1));
        Assert.Equal(HttpStatusCode.OK, await LookAsync(browser));

        site.Clock.Advance(SignInSession.Idle);

        Assert.Equal(HttpStatusCode.Redirect, await LookAsync(browser));
    }

    [Fact]
    public async Task Without_the_pages_token_nothing_is_ended()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);

        foreach (var endpoint in new[] { "/my-sign-in/end-session", "/sign-out", "/passkey/creation", "/my-sign-in/passkeys/remove" })
        {
            var form = new FormUrlEncodedContent(new Dictionary<string, string> { ["id"] = "x" });
            Assert.Equal(HttpStatusCode.BadRequest, (await browser.PostAsync(endpoint, form, Cancel)).StatusCode);
        }
        Assert.Equal(HttpStatusCode.OK, await LookAsync(browser));
    }

    private static async Task<HttpStatusCode> LookAsync(HttpClient browser) => (await browser.GetAsync("/my-sign-in", Cancel)).StatusCode;
}
