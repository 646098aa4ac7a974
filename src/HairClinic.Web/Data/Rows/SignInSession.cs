namespace HairClinic.Web.Data.Rows;

/// <summary>
/// One sign-in of one person at one device. The cookie carries its id inside what the server has sealed, so the id by itself opens
/// nothing. It counts while it has not been ended and neither limit has passed, which SQL can ask as simply as the program.
/// </summary>
public sealed class SignInSession
{
    /// <summary>It ends after so long in any case.</summary>
    public static readonly Duration Longest = Duration.FromHours(12);

    /// <summary>And after so long without use.</summary>
    public static readonly Duration Idle = Duration.FromMinutes(60);

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
        IdleAfter = Idle;
        IdleUntil = now + IdleAfter;
        ExpiresAt = now + Longest;
    }

    /// <summary>A sign-in at a shared tablet, which locks itself early.</summary>
    /// <param name="full">Their full sign-in there, when they came by PIN: that one's end is this one's, and a PIN proves nothing anew.</param>
    public SignInSession(Guid id, AppUser user, SignInWay way, string device, Instant now, Tablet tablet, SignInSession? full)
        : this(id, user, way, device, now)
    {
        TabletId = tablet.Id;
        Device = tablet.Name;
        IdleAfter = Duration.FromMinutes(tablet.LockAfterMinutes);
        IdleUntil = now + IdleAfter;
        if (full is not null)
            (FullId, ExpiresAt, SteppedUpAt) = (full.Id, full.ExpiresAt, Instant.FromUnixTimeSeconds(0));
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

    /// <summary>How long without use it lasts.</summary>
    public Duration IdleAfter { get; private set; }

    /// <summary>Moves on as long as they do something. Past it, a full sign-in at a tablet is locked and not ended: a PIN takes it up.</summary>
    public Instant IdleUntil { get; private set; }

    /// <summary>The shared tablet it is at.</summary>
    public Guid? TabletId { get; private set; }

    /// <summary>Of a sign-in by PIN: the full sign-in it stands on.</summary>
    public Guid? FullId { get; private set; }

    /// <summary>Never moves.</summary>
    public Instant ExpiresAt { get; private set; }

    public Instant? EndedAt { get; private set; }
    public SessionEnd? EndedBecause { get; private set; }

    public void End(SessionEnd why, Instant now) => (EndedAt, EndedBecause) = (EndedAt ?? now, EndedBecause ?? why);
}

/// <summary>Why a sign-in ended before its time.</summary>
public enum SessionEnd
{
    SignedOut,

    /// <summary>Its person ended it from another screen.</summary>
    EndedByPerson,

    /// <summary>An owner or manager ended it.</summary>
    EndedByManager,

    /// <summary>A password, passkey or codes app of theirs was changed.</summary>
    SignInChanged,

    /// <summary>The shared tablet was locked, or somebody else took it.</summary>
    Locked,

    /// <summary>They signed in at more places than one person has.</summary>
    TooMany,
}

/// <summary>How somebody proved who they are.</summary>
public enum SignInWay
{
    Password,
    PasswordAndCode,
    PasswordAndRecoveryCode,
    Passkey,

    /// <summary>A PIN at a shared tablet where they are signed in already.</summary>
    Pin,

    /// <summary>The practice's own sign-in provider.</summary>
    Provider,
}
