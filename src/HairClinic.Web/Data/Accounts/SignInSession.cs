using NodaTime;

namespace HairClinic.Web.Data.Accounts;

/// <summary>
/// One sign-in of one person at one device. The cookie carries its id inside what the server has sealed, so the id by itself opens
/// nothing. It counts while it has not been ended and neither limit has passed, which SQL can ask as simply as the program.
/// </summary>
public sealed class SignInSession
{
    private SignInSession() { }

    public SignInSession(Guid id, AppUser user, SignInWay way, string device, Instant now)
    {
        Id = id;
        UserId = user.Id;
        PracticeId = user.PracticeId;
        PersonId = user.PersonId;
        Way = way;
        Device = device;
        CreatedAt = LastSeenAt = SteppedUpAt = now;
        IdleUntil = now + SessionBook.Idle;
        ExpiresAt = now + SessionBook.Longest;
    }

    public Guid Id { get; private set; }

    public Guid UserId { get; private set; }

    public Guid PracticeId { get; private set; }

    public Guid PersonId { get; private set; }

    public SignInWay Way { get; private set; }

    /// <summary>Browser and system in words, such as "Firefox on Windows".</summary>
    public string Device { get; private set; } = "";

    public Instant CreatedAt { get; private set; }

    public Instant LastSeenAt { get; private set; }

    /// <summary>When they last proved who they are; signing in counts.</summary>
    public Instant SteppedUpAt { get; private set; }

    /// <summary>Moves on as long as they do something.</summary>
    public Instant IdleUntil { get; private set; }

    /// <summary>Never moves.</summary>
    public Instant ExpiresAt { get; private set; }

    public Instant? EndedAt { get; private set; }

    public SessionEnd? EndedBecause { get; private set; }

    public void End(SessionEnd why, Instant now) => (EndedAt, EndedBecause) = (EndedAt ?? now, EndedBecause ?? why);
}
