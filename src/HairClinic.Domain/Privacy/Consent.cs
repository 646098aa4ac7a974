namespace HairClinic.Domain.Privacy;

/// <summary>A client said yes, or took it back. Rows are only ever added; what stands is <see cref="ConsentLedger"/>'s to say.</summary>
public sealed class Consent : PracticeOwned
{
    private Consent() { }

    /// <param name="takenBy">The person who asked; null where the client did it on their own page.</param>
    public Consent(Guid id, Guid clientId, ConsentSubject subject, bool given, Guid textId, Instant at, Guid? takenBy, ConsentWay way)
    {
        Id = id;
        ClientId = clientId;
        Subject = subject;
        Given = given;
        TextId = textId;
        At = at;
        TakenBy = takenBy;
        Way = way;
    }

    public Guid ClientId { get; private set; }

    public ConsentSubject Subject { get; private set; }

    /// <summary>False: taken back.</summary>
    public bool Given { get; private set; }

    /// <summary>The words the client had before them.</summary>
    public Guid TextId { get; private set; }

    public Instant At { get; private set; }

    public Guid? TakenBy { get; private set; }

    public ConsentWay Way { get; private set; }
}

/// <summary>What a client agrees to, each by itself: agreeing to one says nothing about another.</summary>
public enum ConsentSubject
{
    Treatment,
    PatchTest,
    Photos,

    /// <summary>Photos shown to people in training, with the face covered.</summary>
    TeachingPhotos,
    Messages,
    InsurerPapers,
}

/// <summary>How a consent was given or taken back.</summary>
public enum ConsentWay
{
    OnPaper,
    OnTablet,
    OnOwnPage,
}
