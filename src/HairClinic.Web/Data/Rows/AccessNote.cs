namespace HairClinic.Web.Data.Rows;

/// <summary>
/// One line of the access log: ids and words of ours only, no names and nothing of anyone's health. Each line is signed
/// together with the signature of the line before, so that none can be changed or taken out unnoticed.
/// </summary>
/// <remarks>It refers to nothing by foreign key: the log outlives what it names.</remarks>
public sealed class AccessNote : PracticeOwned
{
    private AccessNote() { }

    internal AccessNote(Guid practiceId, Guid id, long number)
    {
        AssignToPractice(practiceId);
        Id = id;
        Number = number;
    }

    /// <summary>1, 2, 3 … in the practice, without gaps.</summary>
    public long Number { get; private set; }

    /// <summary>To the microsecond, as the database keeps it.</summary>
    public Instant At { get; init; }

    public AccessActorKind ActorKind { get; init; }
    public Guid? ActorId { get; init; }

    /// <summary>The role at the time, or the job's name.</summary>
    public string Role { get; init; } = "";

    public AccessAction Action { get; init; }
    public Guid? ClientId { get; init; }
    public Guid? SubjectId { get; init; }
    public string? Reason { get; init; }

    /// <summary>The master key that signed it: lines outlive rotations.</summary>
    public string KeyId { get; init; } = "";

    public byte[] PreviousHash { get; init; } = [];
    public byte[] Hash { get; private set; } = [];

    internal AccessNote SetHash(byte[] hash)
    {
        Hash = hash;
        return this;
    }
}

public enum AccessActorKind
{
    Person,
    Client,
    Job,
}

/// <summary>What was done with a client's confidential data.</summary>
public enum AccessAction
{
    OpenedHealth,
    SavedHealth,
    OpenedPhotos,
    AddedPhoto,
    ChangedPhoto,
    RemovedPhoto,
    OpenedPapers,
    ExportedClient,
    ExportedPractice,
    ImportedBinder,
    ErasedClient,
    OpenedCardByGrant,
    GrantedSalon,
    EndedGrant,
    Transferred,
    ExportedAccessLog,
    RotatedKeys,

    /// <summary>At the machine's own command line, a link that sets an owner's password.</summary>
    LetOwnerIn,

    /// <summary>An e-mail address that opens a client's pages was entered or taken away.</summary>
    ChangedOpeningAddress,
    ConfirmedOpeningAddress,
    DeniedOpeningAddress,

    /// <summary>Somebody set another person's sign-in name, address, password or a link to choose one.</summary>
    ChangedSignIn,
}
