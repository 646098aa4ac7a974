using HairClinic.Domain.Chairs;

namespace HairClinic.Domain.Visits;

/// <summary>One step of a visit on the clock. Two of them never use the same chair or stylist at once: the database enforces it.</summary>
public sealed class VisitSegment : PracticeOwned
{
    private VisitSegment() { }

    internal VisitSegment(
        Guid id,
        Guid visitId,
        int position,
        SegmentKind kind,
        Guid? chairId,
        Guid? personId,
        Instant startsAt,
        Instant endsAt
    )
    {
        Id = id;
        VisitId = visitId;
        Position = position;
        Kind = kind;
        ChairId = chairId;
        PersonId = personId;
        StartsAt = startsAt;
        EndsAt = endsAt;
        Occupy();
    }

    public Guid VisitId { get; private set; }
    public int Position { get; private set; }
    public SegmentKind Kind { get; private set; }

    /// <summary>The visit's chair, repeated on each step because the database checks overlaps step by step.</summary>
    public Guid? ChairId { get; private set; }

    public Guid? PersonId { get; private set; }
    public Instant StartsAt { get; private set; }
    public Instant EndsAt { get; private set; }

    /// <summary>Whether it keeps the chair busy; false while the client waits elsewhere, and once the visit is called off.</summary>
    public bool HoldsChair { get; private set; }

    /// <summary>Whether it keeps a person's hands busy; false once the visit is called off.</summary>
    public bool HoldsHands { get; private set; }

    internal void Occupy()
    {
        HoldsChair = ChairId is not null && Kind.TakesChair();
        HoldsHands = PersonId is not null && Kind.TakesHands(EndsAt - StartsAt, ServiceTimeline.UsualShortestUsableWait);
    }

    internal void Release() => (HoldsChair, HoldsHands) = (false, false);
}
