namespace HairClinic.Domain.Practices;

/// <summary>
/// Anything a practice owns. A practice is the tenant: its id is part of every key, and the
/// database refuses rows of any other. Ids are UUIDv7, made by whoever opens the form.
/// </summary>
public abstract class PracticeOwned
{
    public Guid PracticeId { get; private set; }

    public Guid Id { get; protected init; }

    /// <summary>Changes with every save; a form that opened on an older version loses the race and is told so.</summary>
    public uint Version { get; private set; }

    /// <summary>Stamps the owner once. Moving a row between practices is refused.</summary>
    /// <exception cref="InvalidOperationException">The row already belongs to another practice.</exception>
    public void AssignToPractice(Guid practiceId)
    {
        if (PracticeId != Guid.Empty && PracticeId != practiceId)
            throw new InvalidOperationException($"{GetType().Name} {Id} belongs to another practice.");
        PracticeId = practiceId;
    }
}

/// <summary>A row that only its author, or a job, may read again.</summary>
public abstract class ActorOwned : PracticeOwned
{
    /// <summary>The person or client who wrote it; null for a job.</summary>
    public Guid? ActorId { get; private set; }

    public void SetAuthor(Guid? actorId) => ActorId = actorId;
}
