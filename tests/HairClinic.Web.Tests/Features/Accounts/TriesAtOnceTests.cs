using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using HairClinic.Web.Tests.Security;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Accounts;

/// <summary>Many tries at the same moment are as many tries: they lock, and the right one that comes after them opens nothing.</summary>
public sealed class TriesAtOnceTests(PgServer server)
{
    private const string Wrong = "another long guess";

    // More than an account has, fewer than a name may be tried from anywhere.
    private const int Many = 24;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Wrong_codes_lock_and_neither_code_nor_recovery_code_opens_then(bool recovery)
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var app = await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));
        site.Clock.Advance(Duration.FromSeconds(30));
        var half = site.Browser();
        await EmptySite.SendAsync(half, "/sign-in", SignIn("Owner", AccountsSite.Password));

        await BurstAsync(half, "/sign-in-code", Enumerable.Range(0, Many).Select(_ => Code(recovery ? "aaaa-bbbb-cccc-dddd" : "000000")));
        var last = await BurstAsync(half, "/sign-in-code", [Code(recovery ? app.Recovery[0] : app.Code)], from: Many);

        Assert.DoesNotContain(last, a => a.StatusCode == HttpStatusCode.Redirect);
        // Not the half signed in browser alone: the account is shut, for the password too.
        var page = await EmptySite.SendAsync(site.Browser().At("192.0.2.77"), "/sign-in", SignIn("Owner", AccountsSite.Password));
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
    }

    [Fact]
    public async Task The_right_code_among_more_wrong_ones_does_not_open_once_the_tries_are_used_up()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var app = await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));
        site.Clock.Advance(Duration.FromSeconds(30));
        var half = site.Browser();
        await EmptySite.SendAsync(half, "/sign-in", SignIn("Owner", AccountsSite.Password));

        await BurstAsync(half, "/sign-in-code", Enumerable.Range(0, 8).Select(_ => Code("000000")));
        var burst = Enumerable.Range(8, 217).Select(i => Code(i == 40 ? app.Code : "000000"));
        var answers = await BurstAsync(half, "/sign-in-code", burst, from: 8);

        Assert.DoesNotContain(answers, a => a.StatusCode == HttpStatusCode.Redirect);
        Assert.DoesNotContain(
            SignInWay.PasswordAndCode,
            await site.DoAsync((_, db) => db.SignInSessions.Select(s => s.Way).ToListAsync(Cancel))
        );
    }

    [Fact]
    public async Task Codes_are_counted_by_account_too_however_many_browsers_are_half_signed_in()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        await CodesApp.SetUpAsync(site, await site.SignInAsync(StaffRole.Owner));
        HttpClient[] half = [site.Browser(), site.Browser()];
        foreach (var browser in half)
            await EmptySite.SendAsync(browser, "/sign-in", SignIn("Owner", AccountsSite.Password));
        var answers = new List<HttpResponseMessage>();
        // The account is shut after eight of them; here it is looked at who is answered at all.
        foreach (var browser in half)
            answers.AddRange(await BurstAsync(browser, "/sign-in-code", Enumerable.Range(0, 12).Select(_ => Code("")), everywhere: false));

        Assert.Equal(20, answers.Count(a => a.StatusCode != HttpStatusCode.TooManyRequests));
    }

    [Fact]
    public async Task Wrong_passwords_lock_and_the_right_one_opens_nothing_until_the_lock_is_over()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        await BurstAsync(site.Browser(), "/sign-in", Enumerable.Range(0, Many).Select(_ => SignIn("Owner", Wrong)));

        Assert.Equal(HttpStatusCode.OK, (await TryAsync()).StatusCode);
        site.Clock.Advance(Duration.FromMinutes(10));
        Assert.Equal(HttpStatusCode.Redirect, (await TryAsync()).StatusCode);

        Task<HttpResponseMessage> TryAsync() =>
            EmptySite.SendAsync(site.Browser().At("192.0.2.77"), "/sign-in", SignIn("Owner", AccountsSite.Password));
    }

    [Fact]
    public async Task Wrong_proofs_at_an_open_screen_lock_the_account_as_well()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var open = await site.SignInAsync(StaffRole.Owner);

        await BurstAsync(open, "/step-up", Enumerable.Range(0, Many).Select(_ => Proof(Wrong)));

        Assert.Equal(HttpStatusCode.OK, Assert.Single(await BurstAsync(open, "/step-up", [Proof(AccountsSite.Password)], Many)).StatusCode);
        var elsewhere = site.Browser().At("192.0.2.77");
        Assert.Equal(
            HttpStatusCode.OK,
            (await EmptySite.SendAsync(elsewhere, "/sign-in", SignIn("Owner", AccountsSite.Password))).StatusCode
        );
    }

    [Fact]
    public async Task The_present_password_is_not_guessed_where_a_new_one_is_set_either()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var open = await site.SignInAsync(StaffRole.Owner);

        await BurstAsync(open, "/change-password", Enumerable.Range(0, Many).Select(_ => Change(Wrong)));
        var last = Assert.Single(await BurstAsync(open, "/change-password", [Change(AccountsSite.Password)], Many));

        Assert.DoesNotContain("It is changed.", await last.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);

        static Dictionary<string, string> Change(string present) =>
            new()
            {
                ["Input.Present"] = present,
                ["Input.Password"] = "seven quiet orchards at noon",
                ["Input.Again"] = "seven quiet orchards at noon",
            };
    }

    /// <summary>Fills in the form of one showing of a page many times at once.</summary>
    /// <param name="everywhere">Each time from another place.</param>
    private static async Task<HttpResponseMessage[]> BurstAsync(
        HttpClient browser,
        string page,
        IEnumerable<Dictionary<string, string>> many,
        int from = 0,
        bool everywhere = true
    )
    {
        var document = new HtmlParser().ParseDocument(await browser.GetStringAsync(page, Cancel));
        var sheets = many.ToList();
        var form = document
            .QuerySelectorAll("main form[method=post]")
            .First(f => sheets[0].Keys.All(name => f.QuerySelector($"[name='{name}']") is not null));
        var fields = form.QuerySelectorAll("input[name]").ToDictionary(i => i.GetAttribute("name")!, i => i.GetAttribute("value") ?? "");
        return await Task.WhenAll(
            sheets.Select(
                (sheet, i) =>
                    browser.SendAsync(
                        new HttpRequestMessage(HttpMethod.Post, page)
                        {
                            Content = new FormUrlEncodedContent(
                                fields.ToDictionary(f => f.Key, f => sheet.GetValueOrDefault(f.Key, f.Value))
                            ),
                        }.At(everywhere ? $"198.51.{(from + i) / 250}.{1 + ((from + i) % 250)}" : "192.0.2.1"),
                        Cancel
                    )
            )
        );
    }

    private static Dictionary<string, string> SignIn(string name, string password) =>
        new() { ["Input.Name"] = name, ["Input.Password"] = password };

    private static Dictionary<string, string> Code(string code) => new() { ["Input.Code"] = code };

    private static Dictionary<string, string> Proof(string password) => new() { ["Input.Password"] = password };
}
