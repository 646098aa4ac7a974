using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using NodaTime;

namespace HairClinic.Web.Tests.Accounts;

public sealed class SignInTriesTests(PgServer server)
{
    private const int All = 8;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Of_225_tries_at_the_same_moment_eight_are_looked_at_and_the_right_one_after_them_is_not()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        await using var scope = site.Services.CreateAsyncScope();
        // Nobody is sent away here for being too many: it is the count alone that holds.
        using var turns = new HashingQueue(atOnce: 225);
        var (tries, user) = (TriesOf(scope, turns), await UserAsync(site));
        var looked = 0;

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 225).Select(_ => TryAsync(right: false)));

        Assert.Equal(All, looked);
        Assert.DoesNotContain(true, outcomes);
        Assert.False(await TryAsync(right: true));
        Assert.Equal(All, looked);
        site.Clock.Advance(Duration.FromMinutes(10));
        Assert.True(await TryAsync(right: true));

        Task<bool> TryAsync(bool right) =>
            tries.CountAndVerifyAsync(
                user,
                _ =>
                {
                    Interlocked.Increment(ref looked);
                    return Task.FromResult(right);
                },
                pretend: () => { },
                Cancel
            );
    }

    [Fact]
    public async Task What_is_right_forgives_and_what_proves_a_part_gives_its_own_try_back()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        await using var scope = site.Services.CreateAsyncScope();
        var (tries, user) = (TriesOf(scope, new HashingQueue(1)), await UserAsync(site));
        for (var i = 0; i < All - 1; i++)
            Assert.False(await TryAsync(right: false));

        // The last one is right but proves only a part: seven wrong ones stay.
        Assert.True(await TryAsync(right: true));
        Assert.NotNull((await UserAsync(site)).LockoutEnd);
        await tries.GiveBackAsync(user, Cancel);
        Assert.Equal((All - 1, null), await CountedAsync(site));

        Assert.True(await TryAsync(right: true));
        await tries.ForgiveAsync(user, Cancel);
        Assert.Equal((0, null), await CountedAsync(site));

        Task<bool> TryAsync(bool right) => tries.CountAndVerifyAsync(user, _ => Task.FromResult(right), pretend: () => { }, Cancel);
    }

    [Fact]
    public async Task A_lock_begins_the_count_anew_when_it_is_over()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        await using var scope = site.Services.CreateAsyncScope();
        var (tries, user) = (TriesOf(scope, new HashingQueue(1)), await UserAsync(site));
        for (var i = 0; i < All; i++)
            await TryWrongAsync();
        site.Clock.Advance(Duration.FromMinutes(10));

        await TryWrongAsync();

        Assert.Equal((1, null), await CountedAsync(site));

        Task<bool> TryWrongAsync() => tries.CountAndVerifyAsync(user, _ => Task.FromResult(false), pretend: () => { }, Cancel);
    }

    [Fact]
    public async Task Whatever_else_of_the_account_is_saved_meanwhile_brings_no_count_back()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: StaffRole.Owner);
        await using var scope = site.Services.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<AppUser>>();
        // Read before the tries are taken, saved whole after them.
        var before = (await users.FindByNameAsync("Owner"))!;
        var tries = TriesOf(scope, new HashingQueue(1));
        for (var i = 0; i < All; i++)
            await tries.CountAndVerifyAsync(before, _ => Task.FromResult(false), pretend: () => { }, Cancel);

        before.AtSalonId = site.Other.Id;
        Assert.True((await users.UpdateAsync(before)).Succeeded);

        var after = await UserAsync(site);
        Assert.Equal((site.Other.Id, All), (after.AtSalonId, after.AccessFailedCount));
        Assert.NotNull(after.LockoutEnd);
    }

    private static SignInTries TriesOf(AsyncServiceScope scope, HashingQueue turns) =>
        new(
            scope.ServiceProvider.GetRequiredService<ClinicDbFactory>(),
            turns,
            scope.ServiceProvider.GetRequiredService<IOptions<IdentityOptions>>(),
            scope.ServiceProvider.GetRequiredService<IClock>()
        );

    private static async Task<(int Tries, DateTimeOffset? Until)> CountedAsync(AccountsSite site)
    {
        var user = await UserAsync(site);
        return (user.AccessFailedCount, user.LockoutEnd);
    }

    private static Task<AppUser> UserAsync(AccountsSite site) => site.DoAsync((_, db) => db.Users.AsNoTracking().SingleAsync(Cancel));
}
