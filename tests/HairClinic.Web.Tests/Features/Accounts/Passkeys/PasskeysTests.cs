using System.Net;
using System.Text.Json;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Tests.Features.Settings.FirstRun;

namespace HairClinic.Web.Tests.Features.Accounts.Passkeys;

/// <summary>What can be told without a device; making, using and removing one is a story in a real browser.</summary>
public sealed class PasskeysTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_passkey_is_to_be_found_without_a_name_and_unlocked_by_its_owner()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);

        var made = await AskAsync(browser, "/my-sign-in/passkeys", "/passkey/creation");
        var asked = await AskAsync(site.Browser(), "/sign-in", "/passkey/request");

        // Web Authentication level 3, 5.4.4 and 5.5.
        var selection = made.GetProperty("authenticatorSelection");
        Assert.Equal("required", selection.GetProperty("residentKey").GetString());
        Assert.Equal("required", selection.GetProperty("userVerification").GetString());
        Assert.Equal("required", asked.GetProperty("userVerification").GetString());
        Assert.False(asked.TryGetProperty("allowCredentials", out var allowed) && allowed.GetArrayLength() > 0);
    }

    [Fact]
    public async Task An_answer_nobody_asked_for_opens_nothing()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        foreach (var credential in new[] { "", "{}", "not json", """{"id":"AAAA","rawId":"AAAA","type":"public-key","response":{}}""" })
        {
            var answer = await EmptySite.SendAsync(
                site.Browser(),
                "/sign-in",
                new Dictionary<string, string> { ["Credential"] = credential }
            );
            Assert.Contains("does not open anything here", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_page_asks_who_one_is_when_that_was_proved_too_long_ago()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = await site.SignInAsync(StaffRole.Owner);
        site.Clock.Advance(SessionStore.Fresh);

        EmptySite.LeadsTo("/step-up?return=%2Fmy-sign-in%2Fpasskeys", await browser.GetAsync("/my-sign-in/passkeys", Cancel));
    }

    private static async Task<JsonElement> AskAsync(HttpClient browser, string page, string endpoint)
    {
        var document = new HtmlParser().ParseDocument(await browser.GetStringAsync(page, Cancel));
        using var ask = new HttpRequestMessage(HttpMethod.Post, endpoint);
        ask.Headers.Add(
            "RequestVerificationToken",
            document.QuerySelector("main input[name=__RequestVerificationToken]")!.GetAttribute("value")
        );
        var answer = await browser.SendAsync(ask, Cancel);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancel)).RootElement;
    }
}
