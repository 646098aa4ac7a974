namespace HairClinic.Web.Data.Work;

/// <summary>Work asked for in the same transaction as the change that needs it, done by a worker soon after.</summary>
public sealed class WorkItem : ActorOwned
{
    /// <summary>With the pauses between them, about a day.</summary>
    public const int MostAttempts = 40;

    private WorkItem() { }

    public WorkItem(Guid id, WorkKind kind, string body, Instant askedAt) =>
        (Id, Kind, Body, AskedAt, NotBefore) = (id, kind, body, askedAt, askedAt);

    public WorkKind Kind { get; private set; }

    /// <summary>What it needs to know, as JSON.</summary>
    public string Body { get; private set; } = "{}";

    public Instant AskedAt { get; private set; }
    public Instant NotBefore { get; private set; }

    /// <summary>Until then a worker has claimed it; one that died has lost its claim by then.</summary>
    public Instant? HeldUntil { get; private set; }

    /// <summary>When a letter began to be handed to the mail server; null again where that came to an end.</summary>
    public Instant? HandedAt { get; private set; }

    /// <summary>When it ended, whatever its fate.</summary>
    public Instant? DoneAt { get; private set; }

    /// <summary>Null while it is open, and where it was done.</summary>
    public WorkOutcome? Fate { get; private set; }

    public int Attempts { get; private set; }
    public string? LastError { get; private set; }

    public void Claim(Instant until) => HeldUntil = until;

    public void BeginDelivery(Instant now) => HandedAt = now;

    /// <summary>The worker gives its claim back without having done anything.</summary>
    public void ReleaseClaim() => (HeldUntil, HandedAt) = (null, null);

    public void Complete(Instant now)
    {
        ReleaseClaim();
        DoneAt = now;
    }

    /// <summary>Drops the body once it is no longer needed.</summary>
    /// <param name="left">What stays of it, as JSON.</param>
    public void ClearBody(string left = "{}") => Body = left;

    public void End(WorkOutcome fate, string error, Instant now)
    {
        (Fate, LastError) = (fate, error);
        Complete(now);
    }

    /// <summary>It was given up and is to be tried again from the start.</summary>
    public void BeginAnew(Instant now)
    {
        (Fate, DoneAt, Attempts) = (null, null, 0);
        NotBefore = now;
    }

    /// <summary>Nothing is wrong, but it cannot be done just now.</summary>
    public void Postpone(Instant until) => NotBefore = until;

    /// <summary>Tries again later, waiting longer each time, up to three quarters of an hour; in the end it is given up.</summary>
    /// <param name="until">From then on it would be of no use.</param>
    public void RecordFailure(string error, Instant now, Instant? until = null)
    {
        Attempts++;
        LastError = error;
        ReleaseClaim();
        NotBefore = now + Duration.FromSeconds(5 << Math.Min(Attempts, 9));
        if (Attempts >= MostAttempts || NotBefore >= until)
            End(WorkOutcome.GivenUp, error, now);
    }
}

/// <summary>How work ended that was not simply done.</summary>
public enum WorkOutcome
{
    /// <summary>It was refused for good, or tried too often: it was not done and is not tried again.</summary>
    GivenUp,

    /// <summary>A letter that was being handed over when the line broke: it may have gone, so it is not sent again.</summary>
    Unsure,
}
