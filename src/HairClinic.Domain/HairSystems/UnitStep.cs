namespace HairClinic.Domain.HairSystems;

/// <summary>
/// One step of a unit's way, by whom and when it was written, with what the unit was before and after. Steps are only added to; one
/// that was wrong stays and says why it was taken back. Bonds write none: they are their own record.
/// </summary>
public sealed class UnitStep : PracticeOwned
{
    private UnitStep() { }

    internal UnitStep(UnitStepEntry entry, UnitStepKind kind, LocalDate on, Guid hairSystemId, UnitSnapshot before, UnitSnapshot after)
    {
        (Id, HairSystemId, Kind, On) = (entry.Id, hairSystemId, kind, on);
        (RecordedAt, RecordedBy, Note) = (entry.At, entry.By, entry.Note.NullIfBlank());
        (Before, After) = (before, after);
    }

    public Guid HairSystemId { get; private set; }
    public UnitStepKind Kind { get; private set; }

    /// <summary>The salon's day it happened.</summary>
    public LocalDate On { get; private set; }

    public Instant RecordedAt { get; private set; }
    public Guid? RecordedBy { get; private set; }
    public string? Note { get; private set; }

    /// <summary>The step whose day this one corrects; null for a step of its own.</summary>
    public Guid? CorrectsId { get; private set; }

    public UnitSnapshot Before { get; private set; } = UnitSnapshot.Unknown;
    public UnitSnapshot After { get; private set; } = UnitSnapshot.Unknown;

    /// <summary>When it was taken back; null while it stands.</summary>
    public Instant? TakenBackAt { get; private set; }

    public Guid? TakenBackBy { get; private set; }
    public string? TakenBackBecause { get; private set; }

    public bool Stands => TakenBackAt is null;

    /// <summary>Written later, or in the same moment as a later step of the way: an order and its promise are written at once.</summary>
    public bool IsAfter(UnitStep other) => RecordedAt > other.RecordedAt || RecordedAt == other.RecordedAt && Kind > other.Kind;

    internal void SetCorrects(Guid stepId) => CorrectsId = stepId;

    internal void MarkTakenBack(Instant at, Guid? by, string because) =>
        (TakenBackAt, TakenBackBy, TakenBackBecause) = (at, by, because.Trim());
}

/// <summary>What a unit was at a moment, as far as a step changes it.</summary>
public sealed record UnitSnapshot(
    UnitState State,
    UnitDates Dates,
    UnitPlace? Place,
    Guid? PlaceSalonId,
    string? Spot,
    UnitCleaning? Cleaning,
    int? RemadeTimes,
    string? RetiredBecause,
    Guid? ClientId,
    Guid? OrderId
)
{
    /// <summary>What was said of how it looked as it was retired.</summary>
    public UnitEndLook? EndLook { get; init; }

    internal static readonly UnitSnapshot Unknown = new(default, new(), null, null, null, null, null, null, null, null);
}

/// <summary>Who writes a step, and when.</summary>
/// <param name="Id">Of the step, and of what it adds to the unit.</param>
/// <param name="Today">The salon's day: no step lies after it.</param>
/// <param name="LastOffOn">The day its last bond came off, if it was ever worn: what follows does not lie before.</param>
public sealed record UnitStepEntry(Guid Id, LocalDate Today, Instant At, Guid? By, LocalDate? LastOffOn = null, string? Note = null);

/// <summary>The steps of a unit's way that a person writes.</summary>
public enum UnitStepKind
{
    Ordered,
    Acknowledged,
    Promised,
    Shipped,
    Arrived,
    Inspected,
    Accepted,
    SentBack,
    Refused,
    Prepared,
    Cleaned,
    LeftToDry,
    SetForCleaning,
    Moved,
    SentForRepair,
    BackFromRepair,
    Lent,
    BackFromLoan,
    GivenToClient,
    KeptAsSpare,
    Retired,
    Lost,
    Damaged,
    ReturnedToClient,
    Found,
    Cancelled,

    /// <summary>An earlier step happened on another day than was written.</summary>
    DayCorrected,
}
