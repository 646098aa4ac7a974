namespace HairClinic.Web.Data.Rows;

/// <summary>A browser that several people of the practice work at in turn. It carries a token; only the token's hash is kept.</summary>
public sealed class Tablet : PracticeOwned
{
    private Tablet() { }

    public Tablet(Guid id, string name, int lockAfterMinutes, byte[] tokenHash, Instant now) =>
        (Id, Name, LockAfterMinutes, TokenHash, MadeAt) = (id, name, lockAfterMinutes, tokenHash, now);

    /// <summary>Where it stands, such as "Chair 2 tablet".</summary>
    public string Name { get; private set; } = "";

    /// <summary>Minutes without a touch after which the person at work there has to type their PIN again.</summary>
    public int LockAfterMinutes { get; private set; }

    public byte[] TokenHash { get; private set; } = [];
    public Instant MadeAt { get; private set; }

    /// <summary>When somebody last signed in there.</summary>
    public Instant? LastUsedAt { get; private set; }

    public Instant? EndedAt { get; private set; }

    public void End(Instant now) => EndedAt ??= now;
}
