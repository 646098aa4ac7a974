using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.HairSystems;

/// <summary>A repair of one unit, done on a day.</summary>
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

    public Guid HairSystemId { get; private set; }
    public LocalDate DoneOn { get; private set; }
    public RepairKind Kind { get; private set; }
    public string? Note { get; private set; }
}

/// <summary>What was mended on a unit. A repair is no end of its life; from its day on it tells something about what is left.</summary>
public enum RepairKind
{
    NewFront,
    Reknotted,
    Rim,
    Other,
}
