using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Extensions;

namespace HairClinic.Web.Tests.Features.Accounts.SignIn;

public sealed class SignInTests(PgServer server)
{
    private const string No = "That name and password do not go together";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Nobody", AccountsSite.Password)]
    [InlineData("Owner", "another long guess")]
    [InlineData("Stylist", AccountsSite.Password)]
    [InlineData("Manager", AccountsSite.Password)]
    [InlineData("Trainee", AccountsSite.Password)]
    public async Task Unknown_wrong_locked_left_and_without_password_are_answered_alike(string name, string password)
    {
        await using var site = await AccountsSite.OpenAsync(
            server,
            roles: [StaffRole.Owner, StaffRole.Stylist, StaffRole.Manager, StaffRole.Trainee]
        );
        await UnsettleAsync(site);

        var answer = await TryAsync(site.Browser(), name, password);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains(No, await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.DoesNotContain(
            answer.Headers.TryGetValues("Set-Cookie", out var set) ? set : [],
            c => c.Contains("clinic", StringComparison.Ordinal)
        );
    }

    // How long that takes is measured by the benchmark sign-in; that each is the same work is a rule.
    [Theory]
    [InlineData("Nobody")]
    [InlineData("Owner")]
    [InlineData("Stylist")]
    [InlineData("Manager")]
    [InlineData("Trainee")]
    public async Task Each_of_them_costs_one_check_of_a_password(string name)
    {
        await using var site = await AccountsSite.OpenAsync(
            server,
            with: services =>
                services.AddSingleton<CountingHasher>().AddSingleton<AccountPasswordHasher>(sp => sp.GetRequiredService<CountingHasher>()),
            roles: [StaffRole.Owner, StaffRole.Stylist, StaffRole.Manager, StaffRole.Trainee]
        );
        await UnsettleAsync(site);

        await TryAsync(site.Browser(), name, "another long guess");

        Assert.Equal(1, site.Service<CountingHasher>().Checks);
    }

    [Fact]
    public async Task Wrong_tries_lock_for_ten_minutes_and_no_longer()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = site.Browser();
        for (var i = 0; i < 8; i++)
        {
            site.Service<SignInDelay>().Forget("Owner");
            await TryAsync(browser, "Owner", "another long guess");
        }

        var until = await site.DoAsync((_, db) => db.Users.Select(u => u.LockoutEnd).SingleAsync(Cancel));
        Assert.Equal(site.Clock.GetCurrentInstant() + Duration.FromMinutes(10), until!.Value.ToInstant());
        // More of it while it is locked does not make it longer.
        await TryAsync(browser, "Owner", "another long guess");
        Assert.Equal(until, await site.DoAsync((_, db) => db.Users.Select(u => u.LockoutEnd).SingleAsync(Cancel)));
    }

    [Fact]
    public void Each_wrong_try_waits_longer_whether_or_not_anybody_has_that_name()
    {
        using var pace = new SignInDelay();
        var waits = new List<double>();
        for (var i = 0; i < 10; i++)
        {
            waits.Add(pace.DelayFor(" anybody").TotalMilliseconds);
            pace.Failed("ANYBODY");
        }

        Assert.Equal([0, 0, 0, 200, 400, 800, 1600, 2000, 2000, 2000], waits);
        Assert.Equal(TimeSpan.Zero, pace.DelayFor("somebody else"));
    }

    [Theory]
    [InlineData("/practice/people", "/practice/people")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("https://elsewhere.example/", "/")]
    [InlineData("https:elsewhere.example", "/")]
    [InlineData("javascript:alert(1)", "/")]
    [InlineData("/\t/elsewhere.example", "/")]
    [InlineData("", "/")]
    public async Task Whoever_signs_in_comes_back_to_where_they_wanted_to_go_on_this_site(string wanted, string to)
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var answers = new Dictionary<string, string> { ["Input.Name"] = "Owner", ["Input.Password"] = AccountsSite.Password };

        EmptySite.LeadsTo(to, await EmptySite.SendAsync(site.Browser(), $"/sign-in?ReturnUrl={Uri.EscapeDataString(wanted)}", answers));
    }

    [Fact]
    public async Task The_cookie_is_bound_to_this_host_over_https_and_has_its_bare_name_without()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);

        var sealedCookie = await CookieAsync(site.Browser());
        var bare = await CookieAsync(site.Browser("http://localhost"));

        Assert.StartsWith("__Host-clinic=", sealedCookie, StringComparison.Ordinal);
        foreach (var flag in new[] { "path=/", "secure", "httponly", "samesite=lax" })
            Assert.Contains(flag, sealedCookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("domain=", sealedCookie, StringComparison.OrdinalIgnoreCase);
        Assert.StartsWith("clinic=", bare, StringComparison.Ordinal);
        Assert.Contains("httponly", bare, StringComparison.OrdinalIgnoreCase);

        static async Task<string> CookieAsync(HttpClient browser) =>
            (await TryAsync(browser, "Owner", AccountsSite.Password))
                .Headers.GetValues("Set-Cookie")
                .Single(c => c.Contains("clinic=", StringComparison.Ordinal) && !c.Contains("1970", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Signing_out_ends_the_sign_in_itself_so_that_a_kept_cookie_opens_nothing()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        var browser = site.Browser();
        var cookie = (await TryAsync(browser, "Owner", AccountsSite.Password))
            .Headers.GetValues("Set-Cookie")
            .First(c => c.StartsWith("__Host-clinic=", StringComparison.Ordinal))
            .Split(';')[0];
        var thief = site.Browser();
        thief.DefaultRequestHeaders.Add("Cookie", cookie);
        Assert.Equal(HttpStatusCode.OK, (await thief.GetAsync("/my-sign-in", Cancel)).StatusCode);

        await AccountsSite.PostAsync(browser, "/my-sign-in", "/sign-out");

        Assert.Equal(HttpStatusCode.Redirect, (await thief.GetAsync("/my-sign-in", Cancel)).StatusCode);
    }

    private static Task<HttpResponseMessage> TryAsync(HttpClient browser, string name, string password) =>
        EmptySite.SendAsync(browser, "/sign-in", new Dictionary<string, string> { ["Input.Name"] = name, ["Input.Password"] = password });

    /// <summary>The stylist's account is locked, the manager has left, the trainee has no password yet.</summary>
    private static Task<int> UnsettleAsync(AccountsSite site) =>
        site.DoAsync(
            async (_, db) =>
            {
                await db
                    .Users.Where(u => u.UserName == "Stylist")
                    .ExecuteUpdateAsync(set => set.SetProperty(u => u.LockoutEnd, DateTimeOffset.MaxValue.AddYears(-1)), Cancel);
                (await db.Users.SingleAsync(u => u.UserName == "Trainee", Cancel)).PasswordHash = null;
                (await db.People.SingleAsync(p => p.Name == "Manager", Cancel)).Leave();
                return await db.SaveChangesAsync(Cancel);
            }
        );

    private sealed class CountingHasher(IOptions<PasswordHasherOptions> options) : AccountPasswordHasher(options)
    {
        private int _checks;

        public int Checks => _checks;

        public override PasswordVerificationResult VerifyHashedPassword(AppUser user, string hashedPassword, string providedPassword)
        {
            Interlocked.Increment(ref _checks);
            return base.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }
}
