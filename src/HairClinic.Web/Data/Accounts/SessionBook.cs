using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;
using NodaTime;

namespace HairClinic.Web.Data.Accounts;

/// <summary>Opens, watches and ends sign-ins. Every request and every open screen asks here whether its sign-in still counts.</summary>
/// <remarks>
/// Limits: NIST SP 800-63B-4 advises at level 2 a new sign-in after at most 24 hours and after one hour without activity; ours is a
/// long working day.
/// </remarks>
public sealed class SessionBook(ClinicDbFactory databases, IMemoryCache cache, IClock clock)
{
    public static readonly Duration Longest = Duration.FromHours(12);

    public static readonly Duration Idle = Duration.FromMinutes(60);

    /// <summary>How long a proof of who one is lets one do what cannot be undone.</summary>
    public static readonly Duration Fresh = Duration.FromMinutes(10);

    /// <summary>A desk, a tablet, a phone, a screen at home, and one to spare: common practice, no source.</summary>
    public const int Most = 5;

    private static readonly Duration BetweenLooks = Duration.FromMinutes(1);

    /// <returns>The id the cookie carries.</returns>
    public async Task<Guid> BeginAsync(AppUser user, SignInWay way, string? userAgent, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.OpenUnfenced();
        var open = await Open(db, user.Id, now).OrderBy(s => s.CreatedAt).ToListAsync(cancellation);
        foreach (var oldest in open.Take(Math.Max(0, open.Count - (Most - 1))))
        {
            oldest.End(SessionEnd.TooMany, now);
            cache.Remove(Key(oldest.Id));
        }
        var session = new SignInSession(Guid.NewGuid(), user, way, DeviceWords.Of(userAgent), now);
        db.SignInSessions.Add(session);
        await db.SaveChangesAsync(cancellation);
        return session.Id;
    }

    /// <summary>Whether a request's sign-in counts. Asking is being active; the book is looked into each minute at most.</summary>
    public async Task<bool> SeenAsync(Guid id, Guid userId, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        if (cache.TryGetValue(Key(id), out Instant looked) && now >= looked && now < looked + BetweenLooks)
            return true;
        if (!await StillCountsAsync(id, userId, now, cancellation))
            return false;
        cache.Set(Key(id), now, TimeSpan.FromMinutes(1));
        return true;
    }

    /// <summary>Whether it counts now, having last been used at <paramref name="active"/>. Always looks.</summary>
    public async Task<bool> StillCountsAsync(Guid id, Guid userId, Instant active, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var idle = active + Idle;
        await using var db = databases.OpenUnfenced();
        return await Open(db, userId, now)
                .Where(s => s.Id == id)
                .ExecuteUpdateAsync(
                    set =>
                        set.SetProperty(s => s.LastSeenAt, s => s.LastSeenAt > active ? s.LastSeenAt : active)
                            .SetProperty(s => s.IdleUntil, s => s.IdleUntil > idle ? s.IdleUntil : idle),
                    cancellation
                ) == 1;
    }

    public async Task<bool> IsFreshAsync(Guid id, CancellationToken cancellation)
    {
        var since = clock.GetCurrentInstant() - Fresh;
        await using var db = databases.OpenUnfenced();
        return await db.SignInSessions.AnyAsync(s => s.Id == id && s.EndedAt == null && s.SteppedUpAt > since, cancellation);
    }

    /// <summary>They proved again who they are.</summary>
    public async Task FreshenAsync(Guid id, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.OpenUnfenced();
        await db
            .SignInSessions.Where(s => s.Id == id && s.EndedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(s => s.SteppedUpAt, now), cancellation);
    }

    /// <returns>Whether there was such an open sign-in of theirs.</returns>
    public async Task<bool> EndAsync(Guid userId, Guid id, SessionEnd why, CancellationToken cancellation)
    {
        await using var db = databases.OpenUnfenced();
        return await EndAsync(db.SignInSessions.Where(s => s.UserId == userId && s.Id == id), why, cancellation) > 0;
    }

    /// <summary>Ends all of a person's sign-ins, or all but the one they are at.</summary>
    public async Task EndAllAsync(Guid userId, Guid? except, SessionEnd why, CancellationToken cancellation)
    {
        await using var db = databases.OpenUnfenced();
        await EndAsync(db.SignInSessions.Where(s => s.UserId == userId && s.Id != except), why, cancellation);
    }

    private async Task<int> EndAsync(IQueryable<SignInSession> which, SessionEnd why, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var open = which.Where(s => s.EndedAt == null);
        var ids = await open.Select(s => s.Id).ToListAsync(cancellation);
        var ended = await open.ExecuteUpdateAsync(
            set => set.SetProperty(s => s.EndedAt, now).SetProperty(s => s.EndedBecause, why),
            cancellation
        );
        ids.ForEach(id => cache.Remove(Key(id)));
        return ended;
    }

    public static IQueryable<SignInSession> Open(ClinicDb db, Guid userId, Instant now) =>
        db.SignInSessions.Where(s => s.UserId == userId && s.EndedAt == null && s.ExpiresAt > now && s.IdleUntil > now);

    private static (string, Guid) Key(Guid id) => (nameof(SessionBook), id);
}
