using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts.StepUp;

public sealed class StepUpTests(PgServer server)
{
    private const string Wanted = "/practice/binder/export/clients?for=program";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Ten_minutes_after_signing_in_what_is_grave_asks_anew_and_then_opens()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        var open = await browser.GetAsync(Wanted, Cancel);
        Assert.True(open.IsSuccessStatusCode, await open.Content.ReadAsStringAsync(Cancel));

        site.Clock.Advance(SessionStore.Fresh);

        var asks = "/step-up?return=" + Uri.EscapeDataString(Wanted);
        EmptySite.LeadsTo(asks, await browser.GetAsync(Wanted, Cancel));
        // What is not grave stays open.
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/my-sign-in", Cancel)).StatusCode);
        EmptySite.LeadsTo(Wanted, await ProveAsync(browser, asks));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync(Wanted, Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_wrong_password_proves_nothing()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        site.Clock.Advance(SessionStore.Fresh);

        var page = await (await ProveAsync(browser, "/step-up", "another long guess")).Content.ReadAsStringAsync(Cancel);

        Assert.Contains("That did not prove it", page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await browser.GetAsync(Wanted, Cancel)).StatusCode);
    }

    [Fact]
    public async Task With_a_codes_app_it_takes_password_and_code()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        var app = await CodesApp.SetUpAsync(site, browser);
        site.Clock.Advance(SessionStore.Fresh);

        Assert.Equal(HttpStatusCode.OK, (await ProveAsync(browser, "/step-up", code: "")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await ProveAsync(browser, "/step-up", "another long guess", app.Code)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await browser.GetAsync(Wanted, Cancel)).StatusCode);
        EmptySite.LeadsTo("/", await ProveAsync(browser, "/step-up", code: app.Code));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync(Wanted, Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_post_is_refused_in_a_plain_sentence()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        site.Clock.Advance(SessionStore.Fresh);

        var answer = await AccountsSite.PostAsync(
            browser,
            "/my-sign-in",
            "/my-sign-in/passkeys/remove",
            new Dictionary<string, string> { ["id"] = "AAAA" }
        );

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Contains("prove anew", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("https://elsewhere.example")]
    [InlineData("https:elsewhere.example")]
    public async Task It_leads_nobody_elsewhere(string wanted)
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        EmptySite.LeadsTo(
            "/",
            await ProveAsync(await site.SignInAsync(StaffRole.Owner), "/step-up?return=" + Uri.EscapeDataString(wanted))
        );
    }

    private static Task<HttpResponseMessage> ProveAsync(
        HttpClient browser,
        string page,
        string password = AccountsSite.Password,
        string? code = null
    )
    {
        var answers = new Dictionary<string, string> { ["Input.Password"] = password };
        if (code is not null)
            answers["Input.Code"] = code;
        return EmptySite.SendAsync(browser, page, answers);
    }
}
