using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.HairSystems;

/// <summary>A repair of one unit: done on a day in the salon, or away for some days.</summary>
[ShapesNextOrder]
public sealed class UnitRepair : PracticeOwned
{
    private UnitRepair() { }

    internal UnitRepair(Guid id, Guid hairSystemId, LocalDate doneOn, RepairKind kind, string? note)
    {
        Id = id;
        HairSystemId = hairSystemId;
        DoneOn = doneOn;
        Kind = kind;
        Note = note.NullIfBlank();
    }

    internal UnitRepair(Guid id, Guid hairSystemId, LocalDate sentOn, RepairTrip trip)
    {
        (Id, HairSystemId, SentOn, Kind) = (id, hairSystemId, sentOn, trip.Kind);
        (SentTo, BackPromisedFor, Note) = (trip.To.NullIfBlank(), trip.BackPromisedFor, trip.Note.NullIfBlank());
        RequireOutBeforePromise(sentOn, field: "BackPromisedFor");
    }

    public Guid HairSystemId { get; private set; }

    /// <summary>The day it was mended, or came back; null while it is away.</summary>
    public LocalDate? DoneOn { get; private set; }

    public RepairKind Kind { get; private set; }
    public string? Note { get; private set; }

    /// <summary>The day it went out; null for one that was mended in the salon.</summary>
    public LocalDate? SentOn { get; private set; }

    /// <summary>Who mends it.</summary>
    public string? SentTo { get; private set; }

    public LocalDate? BackPromisedFor { get; private set; }

    /// <summary>Minor units of <see cref="Currency"/>; null where not known.</summary>
    public long? CostMinor { get; private set; }

    /// <summary>ISO 4217.</summary>
    public string? Currency { get; private set; }

    internal void BringBack(LocalDate on, long? costMinor, string? currency)
    {
        DoneOn = on;
        (CostMinor, Currency) = (costMinor, costMinor is null ? null : currency);
    }

    internal void CorrectSentOn(LocalDate on)
    {
        RequireOutBeforePromise(on, field: "On");
        SentOn = on;
    }

    internal void CorrectDoneOn(LocalDate on) => DoneOn = on;

    private void RequireOutBeforePromise(LocalDate sentOn, string field)
    {
        if (BackPromisedFor < sentOn)
            throw new Refusal("It cannot be back before it goes out, on {0}.", sentOn) { Field = field };
    }

    internal void UndoBringBack() => (DoneOn, CostMinor, Currency) = (null, null, null);
}

/// <summary>A repair that is done elsewhere.</summary>
/// <param name="To">Who mends it.</param>
/// <param name="BackPromisedFor">The day it is to be back, where one was named.</param>
public sealed record RepairTrip(RepairKind Kind, string? To, LocalDate? BackPromisedFor, string? Note);

/// <summary>What was mended on a unit. A repair is no end of its life; from its day on it tells something about what is left.</summary>
public enum RepairKind
{
    NewFront,
    Reknotted,
    Rim,
    Other,
}
