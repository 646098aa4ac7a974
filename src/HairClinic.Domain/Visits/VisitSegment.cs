using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Visits;

/// <summary>One step of a visit on the clock. Two hands-on segments of one person never overlap: the database holds it.</summary>
public sealed class VisitSegment : PracticeOwned
{
    private VisitSegment() { }

    internal VisitSegment(Guid id, Guid visitId, int position, SegmentKind kind, Guid? personId, Instant startsAt, Instant endsAt)
    {
        Id = id;
        VisitId = visitId;
        Position = position;
        Kind = kind;
        PersonId = personId;
        StartsAt = startsAt;
        EndsAt = endsAt;
        Hold();
    }

    public Guid VisitId { get; private set; }

    public int Position { get; private set; }

    public SegmentKind Kind { get; private set; }

    public Guid? PersonId { get; private set; }

    public Instant StartsAt { get; private set; }

    public Instant EndsAt { get; private set; }

    /// <summary>Whether it keeps a person's hands busy; false once the visit is called off.</summary>
    public bool HoldsHands { get; private set; }

    internal void Hold() => HoldsHands = Kind == SegmentKind.HandsOn && PersonId is not null;

    internal void Release() => HoldsHands = false;
}
