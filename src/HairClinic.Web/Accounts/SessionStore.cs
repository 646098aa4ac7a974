using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using Microsoft.Extensions.Caching.Memory;

namespace HairClinic.Web.Accounts;

/// <summary>Opens, watches and ends sign-ins. Every request and every open screen asks here whether its sign-in still counts.</summary>
/// <remarks>
/// Limits: NIST SP 800-63B-4 advises at level 2 a new sign-in after at most 24 hours and after one hour without activity; ours is a
/// long working day.
/// </remarks>
public sealed class SessionStore(ClinicDbFactory databases, IMemoryCache cache, IClock clock)
{
    /// <summary>How long a fresh sign-in allows actions that cannot be undone.</summary>
    public static readonly Duration Fresh = Duration.FromMinutes(10);

    /// <summary>A desk, a tablet, a phone, a screen at home, and one to spare: common practice, no source.</summary>
    public const int Most = 5;

    private static readonly Duration BetweenLooks = Duration.FromMinutes(1);

    /// <param name="tablet">The shared tablet it is at; whoever was at work there is locked.</param>
    /// <returns>The id the cookie carries.</returns>
    /// <exception cref="InvalidOperationException">By PIN, without a full sign-in at that tablet.</exception>
    public async Task<Guid> BeginAsync(
        AppUser user,
        SignInWay way,
        string? userAgent,
        CancellationToken cancellation,
        Tablet? tablet = null
    )
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.OpenWithoutActor();
        var device = DeviceDescription.Describe(userAgent);
        SignInSession session;
        if (tablet is null)
            session = new SignInSession(Guid.NewGuid(), user, way, device, now);
        else
        {
            await LockTabletAsync(tablet.Id, cancellation);
            var before = await FullSessionsAt(db, tablet.Id, now).Where(s => s.UserId == user.Id).ToListAsync(cancellation);
            if (way != SignInWay.Pin)
                before.ForEach(s => s.End(SessionEnd.SignedOut, now));
            else if (before is [])
                throw new InvalidOperationException("A PIN stands on a full sign-in.");
            session = new SignInSession(Guid.NewGuid(), user, way, device, now, tablet, way == SignInWay.Pin ? before[0] : null);
        }
        var open = await ActiveSessions(db, user.Id, now).Where(s => s.FullId == null).OrderBy(s => s.CreatedAt).ToListAsync(cancellation);
        foreach (var oldest in open.Take(way == SignInWay.Pin ? 0 : Math.Max(0, open.Count - (Most - 1))))
        {
            oldest.End(SessionEnd.TooMany, now);
            cache.Remove(Key(oldest.Id));
        }
        db.SignInSessions.Add(session);
        await db.SaveChangesAsync(cancellation);
        return session.Id;
    }

    /// <summary>Locks this tablet: sign-ins by PIN end, full sign-ins wait for their PIN.</summary>
    public async Task LockTabletAsync(Guid tabletId, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.OpenWithoutActor();
        var here = db.SignInSessions.Where(s => s.TabletId == tabletId && s.EndedAt == null);
        await EndAsync(here.Where(s => s.FullId != null), SessionEnd.Locked, cancellation);
        await here.Where(s => s.IdleUntil > now).ExecuteUpdateAsync(set => set.SetProperty(s => s.IdleUntil, now), cancellation);
    }

    /// <summary>Full sign-ins at a tablet that a PIN may take up, whether locked or at work.</summary>
    public static IQueryable<SignInSession> FullSessionsAt(ClinicDb db, Guid tabletId, Instant now) =>
        db.SignInSessions.Where(s => s.TabletId == tabletId && s.FullId == null && s.EndedAt == null && s.ExpiresAt > now);

    /// <summary>Whether a request's sign-in counts. Asking is being active; the book is looked into each minute at most.</summary>
    /// <param name="atTablet">A shared tablet locks within minutes: each request is looked up and counts.</param>
    /// <param name="isUse">Whether a person asked, and not the page by itself.</param>
    public async Task<bool> CheckAndTouchAsync(
        Guid id,
        Guid userId,
        CancellationToken cancellation,
        bool atTablet = false,
        bool isUse = true
    )
    {
        var now = clock.GetCurrentInstant();
        if (atTablet)
            return await TouchIfActiveAsync(id, userId, isUse ? now : Instant.MinValue, cancellation);
        if (cache.TryGetValue(Key(id), out Instant looked) && now >= looked && now < looked + BetweenLooks)
            return true;
        if (!await TouchIfActiveAsync(id, userId, now, cancellation))
            return false;
        cache.Set(Key(id), now, TimeSpan.FromMinutes(1));
        return true;
    }

    /// <summary>Whether it counts now, having last been used at <paramref name="active"/>. Always looks.</summary>
    public async Task<bool> TouchIfActiveAsync(Guid id, Guid userId, Instant active, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.OpenWithoutActor();
        return await ActiveSessions(db, userId, now)
                .Where(s => s.Id == id)
                .ExecuteUpdateAsync(
                    set =>
                        set.SetProperty(s => s.LastSeenAt, s => s.LastSeenAt > active ? s.LastSeenAt : active)
                            .SetProperty(s => s.IdleUntil, s => s.IdleUntil > active + s.IdleAfter ? s.IdleUntil : active + s.IdleAfter),
                    cancellation
                ) == 1;
    }

    public async Task<bool> IsFreshAsync(Guid id, CancellationToken cancellation)
    {
        var since = clock.GetCurrentInstant() - Fresh;
        await using var db = databases.OpenWithoutActor();
        return await db.SignInSessions.AnyAsync(s => s.Id == id && s.EndedAt == null && s.SteppedUpAt > since, cancellation);
    }

    /// <summary>They proved again who they are.</summary>
    public async Task RecordStepUpAsync(Guid id, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        await using var db = databases.OpenWithoutActor();
        await db
            .SignInSessions.Where(s => s.Id == id && s.EndedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(s => s.SteppedUpAt, now), cancellation);
    }

    /// <summary>Ends it, and with it the full sign-in at a tablet it stands on, and whatever stands on that.</summary>
    /// <returns>Whether there was such an open sign-in of theirs.</returns>
    public async Task<bool> EndAsync(Guid userId, Guid id, SessionEnd why, CancellationToken cancellation)
    {
        await using var db = databases.OpenWithoutActor();
        var full = await FullAsync(db, id, cancellation);
        var theirs = db.SignInSessions.Where(s => s.UserId == userId);
        return await EndAsync(theirs.Where(s => s.Id == full || s.FullId == full), why, cancellation) > 0;
    }

    /// <summary>Ends all of a person's sign-ins, or all but the one they are at.</summary>
    public async Task EndAllAsync(Guid userId, Guid? except, SessionEnd why, CancellationToken cancellation)
    {
        await using var db = databases.OpenWithoutActor();
        var full = except is { } one ? await FullAsync(db, one, cancellation) : (Guid?)null;
        await EndAsync(db.SignInSessions.Where(s => s.UserId == userId && s.Id != except && s.Id != full), why, cancellation);
    }

    /// <summary>Everybody's sign-ins at a tablet that is one no more.</summary>
    public async Task EndAllAtTabletAsync(Guid practiceId, Guid tabletId, CancellationToken cancellation)
    {
        await using var db = databases.OpenWithoutActor();
        var there = db.SignInSessions.Where(s => s.PracticeId == practiceId && s.TabletId == tabletId);
        await EndAsync(there, SessionEnd.EndedByManager, cancellation);
    }

    private static async Task<Guid> FullAsync(ClinicDb db, Guid id, CancellationToken cancellation) =>
        await db.SignInSessions.Where(s => s.Id == id).Select(s => s.FullId).SingleOrDefaultAsync(cancellation) ?? id;

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

    public static IQueryable<SignInSession> ActiveSessions(ClinicDb db, Guid userId, Instant now) =>
        db
            .SignInSessions.Where(s => s.UserId == userId && s.EndedAt == null && s.ExpiresAt > now && s.IdleUntil > now)
            .Where(s => !db.SignInSessions.Any(full => full.Id == s.FullId && full.EndedAt != null));

    private static (string, Guid) Key(Guid id) => (nameof(SessionStore), id);
}
