using System.Net;
using HairClinic.Domain.Practices;

namespace HairClinic.Web.Tests.Security;

[Collection(LookedAtSite.Name)]
public sealed class CookieTests(LookedAtSite looked)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private ClinicSite Site => looked.Site;

    private string Owner => ClinicSite.NameOf(Site.Here.Staff[StaffRole.Owner]);

    [Fact]
    public async Task Every_cookie_is_kept_from_scripts_from_other_sites_and_from_plain_connections()
    {
        var cookies = new List<string>();
        cookies.AddRange(Set(await Site.Browser().GetAsync("/sign-in", Cancel)));
        cookies.AddRange(Set(await ClinicSite.TryAsync(Site.Browser(), Owner, ClinicSite.Password)));
        var guest = Site.Browser();
        cookies.AddRange(
            Set(
                await Features.Settings.FirstRun.EmptySite.SendAsync(
                    guest,
                    await Site.LinkAsync(Site.Here.Own.Client),
                    new Dictionary<string, string>()
                )
            )
        );

        Assert.True(cookies.Count >= 3);
        Assert.All(
            cookies,
            cookie =>
            {
                Assert.Contains("; httponly", cookie, StringComparison.OrdinalIgnoreCase);
                Assert.Contains("; secure", cookie, StringComparison.OrdinalIgnoreCase);
                Assert.Matches("(?i); samesite=(lax|strict)", cookie);
                Assert.DoesNotContain("; domain=", cookie, StringComparison.OrdinalIgnoreCase);
            }
        );
    }

    [Fact]
    public async Task No_cookie_says_what_this_site_is_or_is_made_of()
    {
        var names = Set(await Site.Browser().GetAsync("/sign-in", Cancel))
            .Concat(Set(await ClinicSite.TryAsync(Site.Browser(), Owner, ClinicSite.Password)))
            .Select(c => c.Split('=')[0]);

        Assert.All(names, n => Assert.DoesNotMatch("(?i)hair|wig|aspnet|blazor|identity", n));
    }

    [Fact]
    public async Task A_changed_or_made_up_cookie_opens_nothing()
    {
        var (name, value) = await SignInCookieAsync();

        foreach (var forged in new[] { "made-up", Changed(value) })
            Assert.Equal(HttpStatusCode.Redirect, (await WithAsync(name, forged, "/due")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await WithAsync(name, value, "/due")).StatusCode);

        static string Changed(string value) => value[..^20] + (value[^20] == 'A' ? 'B' : 'A') + value[^19..];
    }

    [Fact]
    public async Task A_clients_sign_in_is_no_sign_in_of_staff_whatever_its_name()
    {
        var (staff, _) = await SignInCookieAsync();
        var opened = Set(
            await Features.Settings.FirstRun.EmptySite.SendAsync(
                Site.Browser(),
                await Site.LinkAsync(Site.Here.Own.Client),
                new Dictionary<string, string>()
            )
        );
        var own = opened.Single(c => !c.StartsWith("form=", StringComparison.Ordinal)).Split(';')[0];

        Assert.Equal(HttpStatusCode.OK, (await WithAsync(own.Split('=', 2)[0], own.Split('=', 2)[1], "/my-hair")).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await WithAsync(staff, own.Split('=', 2)[1], "/due")).StatusCode);
    }

    private async Task<(string Name, string Value)> SignInCookieAsync()
    {
        var set = Set(await ClinicSite.TryAsync(Site.Browser(), Owner, ClinicSite.Password));
        var parts = set.Single(c => !c.StartsWith("form=", StringComparison.Ordinal)).Split(';')[0].Split('=', 2);
        return (parts[0], parts[1]);
    }

    private async Task<HttpResponseMessage> WithAsync(string name, string value, string path)
    {
        var browser = Site.Site.CreateClient(
            new()
            {
                AllowAutoRedirect = false,
                HandleCookies = false,
                BaseAddress = new Uri("https://localhost"),
            }
        );
        browser.DefaultRequestHeaders.Add("Cookie", $"{name}={value}");
        return await browser.GetAsync(path, Cancel);
    }

    private static IEnumerable<string> Set(HttpResponseMessage answer) =>
        answer.Headers.TryGetValues("Set-Cookie", out var cookies) ? cookies : [];
}
