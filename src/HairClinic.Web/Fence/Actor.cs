namespace HairClinic.Web.Fence;

/// <summary>Who is acting: set once per request, circuit or job. Without one nothing can be read.</summary>
public abstract record Actor(Guid PracticeId)
{
    /// <summary>Who to name in a record; null for a job.</summary>
    public virtual Guid? Id => null;

    /// <summary>Who is responsible: whoever started the job, else the actor.</summary>
    public virtual Actor Author => this;

    /// <summary>The word the database policies read.</summary>
    public abstract string Role { get; }
}

/// <summary>Someone who works in the practice.</summary>
/// <param name="Salons">The salons they may look into; an owner's are all.</param>
/// <param name="AtSalon">The one their screens speak of.</param>
/// <param name="SessionId">The sign-in they act under.</param>
public sealed record PersonActor(
    Guid PracticeId,
    Guid PersonId,
    StaffRole StaffRole,
    IReadOnlyList<Guid> Salons,
    Guid? AtSalon,
    Guid? SessionId = null
) : Actor(PracticeId)
{
    public override Guid? Id => PersonId;

    public override string Role => StaffRole.ToString();
}

/// <summary>A client who sees only themselves.</summary>
/// <param name="SignInId">The sign-in they came by, which may be ended; null for what is done in their name without one, which sees their dates only.</param>
public sealed record ClientActor(Guid PracticeId, Guid ClientId, Guid? SignInId = null) : Actor(PracticeId)
{
    public override Guid? Id => ClientId;

    public override string Role => "Client";
}

/// <summary>Work done for the practice as a whole: imports, refreshes, mail.</summary>
/// <param name="For">Who began it, where somebody waits for its answer.</param>
public sealed record JobActor(Guid PracticeId, string Job, Actor? For = null) : Actor(PracticeId)
{
    public override Guid? Id => For?.Id;

    public override Actor Author => For ?? this;

    public override string Role => "Job";
}
