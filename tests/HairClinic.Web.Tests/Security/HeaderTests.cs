using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Security;

/// <summary>What each kind of answer tells a browser. The values asked for are those of the OWASP ASVS 5.0.0, sections 3.2 and 3.4.</summary>
[Collection(LookedAtSite.Name)]
public sealed class HeaderTests(LookedAtSite looked)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private ClinicSite Site => looked.Site;

    [Theory]
    [InlineData("/sign-in", HttpStatusCode.OK)]
    [InlineData("/due", HttpStatusCode.Redirect)]
    [InlineData("/alive", HttpStatusCode.OK)]
    [InlineData("/ready", HttpStatusCode.OK)]
    [InlineData("/tokens.css", HttpStatusCode.OK)]
    [InlineData("/js/shell.js", HttpStatusCode.OK)]
    [InlineData("/mark.svg", HttpStatusCode.OK)]
    [InlineData("/manifest.webmanifest", HttpStatusCode.OK)]
    [InlineData("/my-hair", HttpStatusCode.Redirect)]
    [InlineData("/my-hair/ask-link", HttpStatusCode.OK)]
    [InlineData("/there-is-no-such-page", HttpStatusCode.Redirect)]
    [InlineData("/error", HttpStatusCode.OK)]
    [InlineData("/not-found", HttpStatusCode.OK)]
    public async Task Every_kind_of_answer_carries_every_header(string path, HttpStatusCode status)
    {
        using var answer = await Browser().GetAsync(path, Cancel);

        Assert.Equal(status, answer.StatusCode);
        Assert.Empty(Lacking(answer));
    }

    [Theory]
    [InlineData("/due", HttpStatusCode.OK)]
    [InlineData("/there-is-no-such-page", HttpStatusCode.NotFound)]
    [InlineData("/clients/no-id/card", HttpStatusCode.NotFound)]
    [InlineData("/clients/00000000-0000-0000-0000-000000000000/card", HttpStatusCode.NotFound)]
    [InlineData("/practice/throw-demo-away", HttpStatusCode.Redirect)]
    [InlineData("/practice/binder/export/nothing?for=people", HttpStatusCode.NotFound)]
    public async Task So_it_does_to_someone_signed_in(string path, HttpStatusCode status)
    {
        using var answer = await (await SignInAsync(StaffRole.Manager)).GetAsync(path, Cancel);

        Assert.Equal(status, answer.StatusCode);
        Assert.Empty(Lacking(answer));
    }

    [Theory]
    [InlineData("/my-hair", HttpStatusCode.OK)]
    [InlineData("/my-hair/my-units", HttpStatusCode.OK)]
    [InlineData("/my-hair/choose-a-time", HttpStatusCode.OK)]
    [InlineData("/my-hair/preferences", HttpStatusCode.OK)]
    [InlineData("/my-hair/dates.ics", HttpStatusCode.OK)]
    [InlineData("/my-hair/calendar/nothing", HttpStatusCode.NotFound)]
    [InlineData("/my-hair/call-off-my-time", HttpStatusCode.NotFound)]
    public async Task So_it_does_to_a_client_and_names_no_program(string path, HttpStatusCode status)
    {
        var browser = Browser();
        using var let = await EmptySite.SendAsync(browser, await Site.LinkAsync(Site.Here.Own.Client), new Dictionary<string, string>());
        using var answer = await browser.GetAsync(path, Cancel);

        Assert.Equal(status, answer.StatusCode);
        Assert.Empty(Lacking(answer));
        Assert.DoesNotMatch("(?i)hair-?clinic", await answer.Content.ReadAsStringAsync(Cancel));
    }

    [Fact]
    public async Task So_do_refusals_of_what_was_sent()
    {
        using var form = new FormUrlEncodedContent([KeyValuePair.Create("Input.Name", "x")]);
        var browser = await SignInAsync(StaffRole.Manager);
        using var unmarked = await browser.PostAsync("/sign-in", form, Cancel);
        using var wrongMethod = await browser.PutAsync("/alive", null, Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, unmarked.StatusCode);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, wrongMethod.StatusCode);
        Assert.Empty(Lacking(unmarked));
        Assert.Empty(Lacking(wrongMethod));
    }

    [Fact]
    public async Task So_does_every_address_there_is()
    {
        var browser = await SignInAsync(StaffRole.Owner);
        var lacking = new List<string>();

        foreach (var route in Site.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>())
        {
            if (route.RoutePattern.Parameters.Count > 0 || route.RoutePattern.RawText!.StartsWith("/_blazor", StringComparison.Ordinal))
                continue;
            using var answer = await browser.GetAsync("/" + route.RoutePattern.RawText.TrimStart('/'), Cancel);
            lacking.AddRange(Lacking(answer).Select(h => $"{route.RoutePattern.RawText}: {h}"));
        }

        Assert.Empty(lacking.Distinct());
    }

    [Fact]
    public async Task Scripts_and_styles_are_our_own_files_and_nothing_in_the_page()
    {
        using var answer = await Site.Browser().GetAsync("/sign-in", Cancel);

        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("*", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Matches("script-src 'self' 'nonce-[A-Za-z0-9+/=]{20,}'", policy);
        foreach (
            var part in new[]
            {
                "default-src 'none'",
                "object-src 'none'",
                "base-uri 'self'",
                "frame-ancestors 'none'",
                "form-action 'self'",
                "style-src 'self'",
            }
        )
            Assert.Contains(part, policy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_mark_of_allowed_scripts_is_new_for_each_page()
    {
        using var one = await Site.Browser().GetAsync("/sign-in", Cancel);
        using var two = await Site.Browser().GetAsync("/sign-in", Cancel);

        Assert.NotEqual(
            one.Headers.GetValues("Content-Security-Policy").Single(),
            two.Headers.GetValues("Content-Security-Policy").Single()
        );
    }

    [Fact]
    public async Task Text_says_which_letters_it_is_written_in()
    {
        foreach (var path in new[] { "/sign-in", "/alive", "/ready", "/not-found" })
        {
            using var answer = await Site.Browser().GetAsync(path, Cancel);
            Assert.Equal("utf-8", answer.Content.Headers.ContentType?.CharSet, ignoreCase: true);
        }
    }

    [Fact]
    public async Task No_page_loads_anything_from_elsewhere()
    {
        var browser = await Site.SignInAsync(ClinicSite.NameOf(Site.Here.Staff[StaffRole.Owner]));
        foreach (var path in new[] { "/sign-in", "/due", "/day", "/my-hair/ask-link" })
            Assert.DoesNotMatch("""(src|href|action)="(https?:)?//""", await browser.GetStringAsync(path, Cancel));
    }

    [Fact]
    public async Task Signing_out_empties_what_the_browser_kept()
    {
        var browser = await Site.SignInAsync(ClinicSite.NameOf(Site.Here.Staff[StaffRole.FrontDesk]));
        var token = new AngleSharp.Html.Parser.HtmlParser()
            .ParseDocument(await browser.GetStringAsync("/change-password", Cancel))
            .QuerySelector("form[action='/sign-out'] input[name=__RequestVerificationToken]")!
            .GetAttribute("value")!;

        using var answer = await browser.PostAsync(
            "/sign-out",
            new FormUrlEncodedContent([KeyValuePair.Create("__RequestVerificationToken", token)]),
            Cancel
        );

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("\"cache\"", answer.Headers.GetValues("Clear-Site-Data").Single());
    }

    // Under a name of its own: browsers are never told to insist on https for localhost.
    private HttpClient Browser()
    {
        var browser = Site.Site.CreateClient(new() { AllowAutoRedirect = false, BaseAddress = new Uri("https://book.example") });
        browser.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        return browser;
    }

    private async Task<HttpClient> SignInAsync(StaffRole role)
    {
        var browser = Browser();
        var answer = await ClinicSite.TryAsync(browser, ClinicSite.NameOf(Site.Here.Staff[role]), ClinicSite.Password);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return browser;
    }

    private static IEnumerable<string> Lacking(HttpResponseMessage answer)
    {
        var isFile =
            answer.Content.Headers.ContentType?.MediaType
            is "text/css"
                or "text/javascript"
                or "image/svg+xml"
                or "application/manifest+json";
        (string Name, string Holds)[] asked =
        [
            ("Content-Security-Policy", "frame-ancestors 'none'"),
            ("Content-Security-Policy", "object-src 'none'"),
            ("Strict-Transport-Security", "max-age=31536000; includeSubDomains"),
            ("X-Content-Type-Options", "nosniff"),
            ("Referrer-Policy", "same-origin"),
            ("Cross-Origin-Opener-Policy", "same-origin"),
            ("Cross-Origin-Resource-Policy", "same-origin"),
            ("Permissions-Policy", "geolocation=()"),
            .. isFile ? [] : new[] { ("Cache-Control", "no-store") },
        ];
        foreach (var (name, holds) in asked)
        {
            var has = answer.Headers.TryGetValues(name, out var values) ? string.Join(", ", values) : "";
            if (!has.Contains(holds, StringComparison.Ordinal))
                yield return $"{name} lacks {holds}: {has}";
        }
        foreach (var name in new[] { "Server", "X-Powered-By", "X-AspNet-Version", "Access-Control-Allow-Origin" })
        {
            if (answer.Headers.Contains(name))
                yield return $"{name} is there";
        }
    }
}
