namespace HairClinic.Domain.Practices;

/// <summary>A row that only whoever wrote it (or a job) may read again.</summary>
public abstract class ActorOwned : PracticeOwned
{
    /// <summary>The person or client who wrote it; null for a job.</summary>
    public Guid? ActorId { get; private set; }

    public void WrittenBy(Guid? actorId) => ActorId = actorId;
}
