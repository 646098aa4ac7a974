namespace HairClinic.Domain.Clients;

/// <summary>A photo of a client. The picture itself is in a sealed file, never here.</summary>
public sealed class Photo : PracticeOwned
{
    /// <summary>Photos a client may have.</summary>
    public const int MostPerClient = 500;

    private Photo() { }

    public Photo(Guid id, Guid clientId, PhotoKind kind, LocalDate takenOn, LocalDate consentOn, PhotoFile file, Guid? by, Instant at)
    {
        if (takenOn > consentOn)
            throw new Refusal("A photo cannot have been taken later than today.");
        Id = id;
        ClientId = clientId;
        Kind = kind;
        TakenOn = takenOn;
        ConsentOn = consentOn;
        (FileId, Width, Height, Bytes) = (file.Id, file.Width, file.Height, file.Bytes);
        AddedBy = by;
        AddedAt = at;
    }

    public Guid ClientId { get; private set; }
    public PhotoKind Kind { get; private set; }

    /// <summary>The unit it shows; null where it names none.</summary>
    public Guid? HairSystemId { get; private set; }

    /// <summary>The visit at which it was taken; null where it names none.</summary>
    public Guid? VisitId { get; private set; }

    public LocalDate TakenOn { get; private set; }

    /// <summary>The day on which the client agreed to it.</summary>
    public LocalDate ConsentOn { get; private set; }

    /// <summary>Whether the client sees it among their own.</summary>
    public bool Shared { get; private set; }

    public int Width { get; private set; }
    public int Height { get; private set; }

    /// <summary>Size of the sealed file.</summary>
    public int Bytes { get; private set; }

    public Guid FileId { get; private set; }
    public Guid? AddedBy { get; private set; }
    public Instant AddedAt { get; private set; }
    public Instant? RemovedAt { get; private set; }

    public void SetAbout(Guid? hairSystemId, Guid? visitId) => (HairSystemId, VisitId) = (hairSystemId, visitId);

    public void SetShared(bool shared) => Shared = shared;

    /// <summary>The files go with it; the row stays, so that the access log still says what it was.</summary>
    public void Remove(Instant at) => (RemovedAt, Shared) = (RemovedAt ?? at, false);
}

/// <summary>A picture as it lies sealed on disk.</summary>
public sealed record PhotoFile(Guid Id, int Width, int Height, int Bytes);

public enum PhotoKind
{
    Before,
    After,
    Template,
    Scalp,
    Other,
}
