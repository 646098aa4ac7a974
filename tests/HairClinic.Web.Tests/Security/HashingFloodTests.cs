using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Tests.Features.Accounts;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Security;

/// <summary>While the machine has passwords enough to check, whoever comes to sign in is told so and loses no try; all else goes on.</summary>
public sealed class HashingFloodTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_password_too_many_is_told_to_come_back_in_a_moment_and_costs_no_try()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, StaffRole.FrontDesk]);
        var desk = await site.SignInAsync(StaffRole.FrontDesk);
        var flood = new TaskCompletionSource<bool>();
        var turns = site.Service<HashingQueue>();
        var taken = Enumerable.Range(0, HashingQueue.Waiting + Environment.ProcessorCount).Select(_ => FloodAsync()).ToList();

        foreach (var name in new[] { "Owner", "Nobody" })
        {
            var answer = await TryAsync(site.Browser(), name);
            Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
            Assert.True(answer.Headers.CacheControl!.NoStore);
            Assert.InRange(answer.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 60);
            Assert.Contains("try again in a moment", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }
        Assert.Equal(HttpStatusCode.OK, (await desk.GetAsync("/due", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await site.Browser().GetAsync("/alive", Cancel)).StatusCode);

        flood.SetResult(true);
        await Task.WhenAll(taken);
        Assert.Equal(0, await site.DoAsync((_, db) => db.Users.SumAsync(u => u.AccessFailedCount, Cancel)));
        Assert.Equal(HttpStatusCode.Redirect, (await TryAsync(site.Browser(), "Owner")).StatusCode);

        async Task FloodAsync()
        {
            try
            {
                await turns.RunAsync(() => flood.Task, Cancel);
            }
            catch (TooBusyException)
            {
                // One more than there is room for.
            }
        }
    }

    [Fact]
    public async Task A_PIN_too_many_as_well()
    {
        await using var at = await TabletSite.OpenAsync(server);
        await at.BeginAsync(StaffRole.Owner);
        await at.LockAsync();
        var flood = new TaskCompletionSource<bool>();
        var turns = at.Site.Service<HashingQueue>();
        var room = Math.Max(1, Environment.ProcessorCount / 2) + HashingQueue.Waiting;
        var taken = Enumerable.Range(0, room).Select(_ => turns.RunAsync(() => flood.Task, Cancel)).ToList();

        Assert.Equal(HttpStatusCode.TooManyRequests, (await at.TypeAsync(StaffRole.Owner)).StatusCode);

        flood.SetResult(true);
        await Task.WhenAll(taken);
        Assert.Equal(0, await at.Site.DoAsync((_, db) => db.TabletPins.Select(p => p.WrongTries).SingleAsync(Cancel)));
        Assert.True(await at.OpensAsync(StaffRole.Owner));
    }

    private static Task<HttpResponseMessage> TryAsync(HttpClient browser, string name) =>
        EmptySite.SendAsync(
            browser,
            "/sign-in",
            new Dictionary<string, string> { ["Input.Name"] = name, ["Input.Password"] = AccountsSite.Password }
        );
}
