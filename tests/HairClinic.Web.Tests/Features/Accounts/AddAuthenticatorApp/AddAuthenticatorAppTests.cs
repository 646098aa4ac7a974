using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Features.Accounts.AddAuthenticatorApp;

public sealed class AddAuthenticatorAppTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_a_first_code_the_app_is_asked_for_others_end_and_a_letter_tells()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var (here, there) = (await site.SignInAsync(StaffRole.Owner), await site.SignInAsync(StaffRole.Owner));

        var app = await CodesApp.SetUpAsync(site, here);

        Assert.Equal(10, app.Recovery.Distinct().Count());
        Assert.Equal(HttpStatusCode.OK, (await here.GetAsync("/my-sign-in", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await there.GetAsync("/my-sign-in", Cancel)).StatusCode);
        var letter = Assert.Single(await site.LettersAsync());
        Assert.Contains("Your sign-in was changed", letter, StringComparison.Ordinal);
        // A letter may be read over a shoulder: nothing in it says what kind of place it is from.
        foreach (var word in new[] { "rebond", "hair", "wig", "clinic", "salon", "Practice under test" })
            Assert.DoesNotContain(word, letter, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Neither_secret_nor_recovery_code_can_be_read_in_the_database()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        var app = await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));

        var kept = await site.DoAsync((_, db) => db.UserTokens.Select(t => t.Value).ToListAsync(Cancel));
        Assert.Equal(2, kept.Count);
        foreach (var told in app.Recovery.Append(app.Secret))
            Assert.DoesNotContain(kept, k => k!.Contains(told, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task A_code_that_does_not_fit_sets_nothing_up()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);

        var answer = await EmptySite.SendAsync(
            browser,
            "/my-sign-in/add-authenticator-app",
            new Dictionary<string, string> { ["Input.Code"] = "000000" }
        );

        Assert.Contains("This code does not fit", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.False(await site.DoAsync((_, db) => db.Users.Select(u => u.TwoFactorEnabled).SingleAsync(Cancel)));
    }

    [Fact]
    public async Task The_picture_is_one_path_without_style()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);

        var page = new HtmlParser().ParseDocument(await browser.GetStringAsync("/my-sign-in/add-authenticator-app", Cancel));

        var picture = page.QuerySelector("svg.qr")!;
        Assert.Null(page.QuerySelector("main [style]"));
        Assert.StartsWith("M", picture.QuerySelector("path")!.GetAttribute("d"), StringComparison.Ordinal);
    }
}
