using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Settings.FirstRun;

namespace HairClinic.Web.Tests.Features.Accounts.NewRecoveryCodes;

public sealed class NewRecoveryCodesTests(PgServer server)
{
    private const string Page = "/my-sign-in/new-recovery-codes";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_new_ones_open_and_the_old_ones_do_not()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        var app = await CodesApp.SetUpAsync(site, browser);

        var answer = await EmptySite.SendAsync(browser, Page, new Dictionary<string, string>());
        var codes = new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(Cancel)).QuerySelectorAll("main li code");

        Assert.Equal(10, codes.Length);
        var old = await app.SignInAsync(site.Browser(), app.Recovery[0]);
        Assert.Contains("This code does not open", await old.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        await site.SignInWithAsync(app, codes[0].TextContent);
    }

    [Fact]
    public async Task Without_a_codes_app_there_are_none()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        var answer = await EmptySite.SendAsync(await site.SignInAsync(StaffRole.Owner), Page, new Dictionary<string, string>());

        Assert.Contains("stand in for a codes app", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }
}
