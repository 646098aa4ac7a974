using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Accounts;

/// <summary>
/// The wrong tries an account has before it is locked for a while. Passwords, codes, recovery codes and step-ups share them: guessing
/// one does not give extra tries for another. A passkey takes none and opens meanwhile.
/// </summary>
/// <remarks>
/// A try is counted before it is checked, by one UPDATE, so that tries at the same moment cannot all be the last one. The columns are
/// Identity's, but only this class writes them: a save of the whole account leaves them as they are (<c>AccountMaps</c>).
/// </remarks>
public sealed class SignInTries(ClinicDbFactory databases, HashingQueue hashing, IOptions<IdentityOptions> options, IClock clock)
{
    /// <summary>Counts a try and checks what was typed.</summary>
    /// <param name="user">Null where nobody has the name.</param>
    /// <param name="look">Whether it is right.</param>
    /// <param name="pretend">Done instead where there is no try to take, to take as long.</param>
    /// <returns>Whether it was right. The try stays taken until it is given back or forgiven.</returns>
    /// <exception cref="TooBusyException">It was not looked at, and no try was taken.</exception>
    public Task<bool> CountAndVerifyAsync(AppUser? user, Func<AppUser, Task<bool>> look, Action pretend, CancellationToken cancellation) =>
        hashing.RunAsync(
            async () =>
            {
                if (user is not null && await CountTryAsync(user.Id, cancellation))
                    return await look(user);
                pretend();
                return false;
            },
            cancellation
        );

    /// <summary>The try of something right that proves only a part of who they are; wrong ones before it stay counted.</summary>
    public async Task GiveBackAsync(AppUser user, CancellationToken cancellation)
    {
        await using var db = databases.OpenWithoutActor();
        await db
            .Users.Where(u => u.Id == user.Id && u.AccessFailedCount > 0)
            .ExecuteUpdateAsync(
                set =>
                    set.SetProperty(u => u.AccessFailedCount, u => u.AccessFailedCount - 1)
                        .SetProperty(u => u.LockoutEnd, (DateTimeOffset?)null),
                cancellation
            );
    }

    /// <summary>They proved who they are: the wrong tries before are forgotten.</summary>
    public async Task ForgiveAsync(AppUser user, CancellationToken cancellation)
    {
        await using var db = databases.OpenWithoutActor();
        await db
            .Users.Where(u => u.Id == user.Id)
            .ExecuteUpdateAsync(
                set => set.SetProperty(u => u.AccessFailedCount, 0).SetProperty(u => u.LockoutEnd, (DateTimeOffset?)null),
                cancellation
            );
    }

    // The last try shuts the account as it is taken; whatever is right forgives and opens it again.
    private async Task<bool> CountTryAsync(Guid userId, CancellationToken cancellation)
    {
        var most = options.Value.Lockout.MaxFailedAccessAttempts;
        var now = clock.GetCurrentInstant().ToDateTimeOffset();
        var until = (DateTimeOffset?)(now + options.Value.Lockout.DefaultLockoutTimeSpan);
        await using var db = databases.OpenWithoutActor();
        return await db
                .Users.Where(u => u.Id == userId && (u.LockoutEnd == null || u.LockoutEnd <= now))
                .ExecuteUpdateAsync(
                    set =>
                        set.SetProperty(u => u.AccessFailedCount, u => u.LockoutEnd == null ? u.AccessFailedCount + 1 : 1)
                            .SetProperty(
                                u => u.LockoutEnd,
                                u => u.LockoutEnd == null && u.AccessFailedCount + 1 >= most || most == 1 ? until : null
                            ),
                    cancellation
                ) == 1;
    }
}
