using AngleSharp.Html.Parser;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using NodaTime;
using OtpNet;

namespace HairClinic.Web.Tests.Features.Accounts;

/// <summary>A codes app on somebody's phone: Otp.NET makes its codes, by the test's clock.</summary>
public sealed record CodesApp(AccountsSite Site, string Secret, IReadOnlyList<string> Recovery)
{
    public string Code => CodeFor(Secret, Site.Clock.GetCurrentInstant());

    public static async Task<CodesApp> SetUpAsync(AccountsSite site, HttpClient browser)
    {
        var cancel = TestContext.Current.CancellationToken;
        // Secret and form belong to one showing of the page.
        var document = new HtmlParser().ParseDocument(await browser.GetStringAsync("/my-sign-in/add-authenticator-app", cancel));
        var secret = document.QuerySelector("main code")!.TextContent.Replace(" ", "", StringComparison.Ordinal);
        var fields = document
            .QuerySelectorAll("main form[method=post] input[name]")
            .ToDictionary(i => i.GetAttribute("name")!, i => i.GetAttribute("value") ?? "");
        fields["Input.Code"] = CodeFor(secret, site.Clock.GetCurrentInstant());
        var answer = await browser.PostAsync("/my-sign-in/add-authenticator-app", new FormUrlEncodedContent(fields), cancel);
        var told = new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync(cancel));
        return new CodesApp(site, secret, [.. told.QuerySelectorAll("main li code").Select(c => c.TextContent)]);
    }

    /// <summary>Password and then this code, at a device of their own.</summary>
    public async Task<HttpResponseMessage> SignInAsync(HttpClient browser, string code)
    {
        var answers = new Dictionary<string, string> { ["Input.Name"] = "Owner", ["Input.Password"] = AccountsSite.Password };
        EmptySite.LeadsTo("/sign-in-code?return=%2F", await EmptySite.SendAsync(browser, "/sign-in", answers));
        return await EmptySite.SendAsync(browser, "/sign-in-code?return=%2F", new Dictionary<string, string> { ["Input.Code"] = code });
    }

    private static string CodeFor(string secret, Instant now) => new Totp(Base32Encoding.ToBytes(secret)).ComputeTotp(now.ToDateTimeUtc());
}
