using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Tests.Features.Settings.FirstRun;

namespace HairClinic.Web.Tests.Features.Accounts.RemoveAuthenticatorApp;

public sealed class RemoveAuthenticatorAppTests(PgServer server)
{
    private const string Page = "/my-sign-in/remove-authenticator-app";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Afterwards_the_password_alone_opens_and_a_letter_tells()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        await CodesApp.SetUpAsync(site, browser);

        EmptySite.LeadsTo("/my-sign-in", await EmptySite.SendAsync(browser, Page, new Dictionary<string, string>()));

        var again = await site.SignInAsync(StaffRole.Owner);
        Assert.Equal(HttpStatusCode.OK, (await again.GetAsync("/my-sign-in", Cancel)).StatusCode);
        Assert.Contains(await site.LettersAsync(), l => l.Contains("no longer asked for", StringComparison.Ordinal));
    }

    [Fact]
    public async Task It_asks_who_one_is_when_that_was_proved_too_long_ago()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        await CodesApp.SetUpAsync(site, browser);
        site.Clock.Advance(SessionStore.Fresh);

        EmptySite.LeadsTo("/step-up?return=" + Uri.EscapeDataString(Page), await browser.GetAsync(Page, Cancel));
    }
}
