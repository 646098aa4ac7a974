using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Accounts;

/// <summary>Everything about one's own sign-in: what opens it, where it is open, and when it was used.</summary>
public sealed class MySignIn(
    CurrentAccount own,
    StaffSignInManager accounts,
    SessionStore sessions,
    ClinicDbFactory databases,
    CurrentActor current,
    IClock clock
)
{
    private const int Shown = 12;

    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        var users = accounts.UserManager;
        var user = await own.ReadAsync(cancellation);
        var passkeys = await users.GetPasskeysAsync(user);
        var left = user.TwoFactorEnabled ? await users.CountRecoveryCodesAsync(user) : 0;
        await using var db = databases.Open();
        var now = clock.GetCurrentInstant();
        var zone = await db.Salons.Where(s => s.Id == current.Person.AtSalon).Select(s => s.Zone).SingleOrDefaultAsync(cancellation);
        var last = await db
            .SignInSessions.AsNoTracking()
            .Where(s => s.UserId == user.Id)
            .OrderByDescending(s => s.EndedAt == null && s.ExpiresAt > now && (s.IdleUntil > now || s.TabletId != null && s.FullId == null))
            .ThenByDescending(s => s.CreatedAt)
            .Take(Shown)
            .ToListAsync(cancellation);
        return new Screen(
            user.UserName!,
            user.Email,
            user.TwoFactorEnabled,
            left,
            [.. passkeys.Select(p => p.Name ?? "")],
            [.. last.Select(s => Line(s, now))],
            DateTimeZoneProviders.Tzdb[zone ?? "Etc/UTC"]
        );
    }

    /// <summary>Ends one of their sign-ins, or all but the one they are at.</summary>
    public async Task EndSessionsAsync(Guid? session, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        if (session is { } one)
            await sessions.EndAsync(user.Id, one, SessionEnd.EndedByPerson, cancellation);
        else
            await sessions.EndAllAsync(user.Id, own.Session, SessionEnd.EndedByPerson, cancellation);
    }

    private Place Line(SignInSession s, Instant now) =>
        new(
            s.Id,
            s.Device,
            s.Way,
            s.CreatedAt,
            s.LastSeenAt,
            // Locked at a tablet is open still: a PIN takes it up.
            IsOpen: s.EndedAt is null && s.ExpiresAt > now && (s.IdleUntil > now || s is { TabletId: not null, FullId: null }),
            IsThis: s.Id == own.Session,
            s.EndedBecause
        );

    /// <param name="Passkeys">Their names.</param>
    /// <param name="Places">Open ones first, then the newest.</param>
    public sealed record Screen(
        string Name,
        string? Email,
        bool HasCodes,
        int RecoveryCodesLeft,
        IReadOnlyList<string> Passkeys,
        IReadOnlyList<Place> Places,
        DateTimeZone Zone
    );

    public sealed record Place(
        Guid Id,
        string Device,
        SignInWay Way,
        Instant Since,
        Instant LastSeen,
        bool IsOpen,
        bool IsThis,
        SessionEnd? EndedBecause
    );
}
