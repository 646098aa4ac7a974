using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Features.Accounts;

/// <summary>A site with one shared tablet, at which nobody has signed in yet.</summary>
public sealed class TabletSite(AccountsSite site, HttpClient tablet) : IAsyncDisposable
{
    public const string Pin = "482913";
    public const string Name = "Chair 2 tablet";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public AccountsSite Site => site;

    /// <summary>The tablet's browser.</summary>
    public HttpClient Tablet => tablet;

    public static async Task<TabletSite> OpenAsync(PgServer server, params StaffRole[] others)
    {
        var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, .. others]);
        var browser = await site.SignInAsync(StaffRole.Owner);
        EmptySite.LeadsTo("/sign-in", await MakeAsync(browser));
        return new TabletSite(site, browser);
    }

    public static Task<HttpResponseMessage> MakeAsync(HttpClient browser, string name = Name) =>
        EmptySite.SendAsync(
            browser,
            "/practice/make-tablet",
            new Dictionary<string, string> { ["Input.Name"] = name, ["Input.LockAfterMinutes"] = "3" }
        );

    /// <summary>Signs in fully at the tablet and sets the PIN.</summary>
    public async Task BeginAsync(StaffRole role, string pin = Pin)
    {
        await SignInFullyAsync(role);
        var answers = new Dictionary<string, string> { ["Input.Pin"] = pin, ["Input.Again"] = pin };
        var page = await EmptySite.SendAsync(tablet, "/my-sign-in/set-pin", answers);
        Assert.Contains("Your PIN is set.", await page.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    public async Task SignInFullyAsync(StaffRole role, string password = AccountsSite.Password)
    {
        var answers = new Dictionary<string, string> { ["Input.Name"] = role.ToString(), ["Input.Password"] = password };
        Assert.Equal(HttpStatusCode.Redirect, (await EmptySite.SendAsync(tablet, "/sign-in", answers)).StatusCode);
    }

    public Task<HttpResponseMessage> LockAsync(string from = "/due") =>
        AccountsSite.PostAsync(tablet, "/my-sign-in", "/lock-tablet", new Dictionary<string, string> { ["from"] = from });

    public async Task<HttpResponseMessage> TypeAsync(StaffRole role, string pin = Pin) =>
        await EmptySite.SendAsync(
            tablet,
            $"/switch-person?who={await PersonAsync(role)}",
            new Dictionary<string, string> { ["Input.Pin"] = pin }
        );

    /// <summary>Whether the PIN lets them in.</summary>
    public async Task<bool> OpensAsync(StaffRole role, string pin = Pin) =>
        (await TypeAsync(role, pin)).StatusCode == HttpStatusCode.Redirect;

    /// <summary>Whether the switch screen names them.</summary>
    public async Task<bool> ListsAsync(StaffRole role) =>
        (await tablet.GetStringAsync("/switch-person", Cancel)).Contains($">{role}</a>", StringComparison.Ordinal);

    public async Task<bool> IsAtWorkAsync() => (await tablet.GetAsync("/my-sign-in", Cancel)).StatusCode == HttpStatusCode.OK;

    /// <summary>Tries a PIN past the pages, as many tries at once do.</summary>
    public async Task<bool> ProveAsync(Guid person, string pin)
    {
        await using var scope = site.Services.CreateAsyncScope();
        var row = await site.DoAsync((_, db) => db.Tablets.AsNoTracking().SingleAsync(Cancel));
        return await scope.ServiceProvider.GetRequiredService<PinStore>().CountAndCheckAsync(row, person, pin, Cancel) is not null;
    }

    public Task<Guid> PersonAsync(StaffRole role)
    {
        var name = role.ToString();
        return site.DoAsync((_, db) => db.People.Where(p => p.Name == name).Select(p => p.Id).SingleAsync(Cancel));
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();
}
