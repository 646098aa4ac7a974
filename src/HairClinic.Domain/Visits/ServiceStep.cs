using HairClinic.Domain.Chairs;

namespace HairClinic.Domain.Visits;

/// <summary>One step of a service.</summary>
public sealed class ServiceStep : PracticeOwned
{
    private ServiceStep() { }

    internal ServiceStep(Guid id, Guid serviceKindId, int position, SegmentKind kind, int minutes)
    {
        if (minutes is < 5 or > 480)
            throw new Refusal("A step lasts 5 to 480 minutes.");
        Id = id;
        ServiceKindId = serviceKindId;
        Position = position;
        Kind = kind;
        Minutes = minutes;
    }

    public Guid ServiceKindId { get; private set; }
    public int Position { get; private set; }
    public SegmentKind Kind { get; private set; }
    public int Minutes { get; private set; }
}
