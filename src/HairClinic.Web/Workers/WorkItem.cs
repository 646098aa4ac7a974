using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Web.Workers;

/// <summary>Work asked for in the same transaction as the change that needs it, done by a worker soon after.</summary>
public sealed class WorkItem : ActorOwned
{
    private WorkItem() { }

    public WorkItem(Guid id, WorkKind kind, string body, Instant askedAt)
    {
        Id = id;
        Kind = kind;
        Body = body;
        AskedAt = askedAt;
        NotBefore = askedAt;
    }

    public WorkKind Kind { get; private set; }

    /// <summary>What it needs to know, as JSON.</summary>
    public string Body { get; private set; } = "{}";

    public Instant AskedAt { get; private set; }

    public Instant NotBefore { get; private set; }

    public Instant? DoneAt { get; private set; }

    public int Attempts { get; private set; }

    public string? LastError { get; private set; }

    public void Done(Instant now) => DoneAt = now;

    /// <summary>Drops what it needed to know, once nobody needs it any more.</summary>
    public void Forget() => Body = "{}";

    /// <summary>It can never be done: it is over, and what it needed to know is dropped.</summary>
    public void GiveUp(string error, Instant now)
    {
        LastError = error;
        Forget();
        Done(now);
    }

    /// <summary>Nothing is wrong, but it cannot be done just now.</summary>
    public void Wait(Instant until) => NotBefore = until;

    /// <summary>Tries again later, waiting longer each time, up to an hour.</summary>
    public void Failed(string error, Instant now)
    {
        Attempts++;
        LastError = error;
        NotBefore = now + Duration.FromSeconds(Math.Min(3600, 5 << Math.Min(Attempts, 9)));
    }
}
