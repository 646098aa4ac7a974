using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Visits;

/// <summary>A client's visit: booked, kept or called off. It takes a chair and, in its hands-on segments, a person.</summary>
public sealed partial class Visit : PracticeOwned
{
    private readonly List<VisitSegment> _segments = [];

    private Visit() { }

    public Visit(Guid id, Guid clientId, Guid salonId, Guid serviceKindId)
    {
        Id = id;
        ClientId = clientId;
        SalonId = salonId;
        ServiceKindId = serviceKindId;
    }

    public Guid ClientId { get; private set; }

    public Guid SalonId { get; private set; }

    public Guid ServiceKindId { get; private set; }

    /// <summary>Null only in visits taken over from an old book.</summary>
    public Guid? ChairId { get; private set; }

    public Guid? PersonId { get; private set; }

    public Instant StartsAt { get; private set; }

    public Instant EndsAt { get; private set; }

    /// <summary>The civil day in the salon's zone, stored so that a day's visits are read by an index.</summary>
    public LocalDate Day { get; private set; }

    public VisitState State { get; private set; } = VisitState.Booked;

    /// <summary>Whether it takes its chair; false once called off.</summary>
    public bool HoldsChair { get; private set; }

    public string? Note { get; private set; }

    /// <summary>The row of the old book it came from, so that bringing the same book twice changes nothing.</summary>
    public string? BookKey { get; private set; }

    public IReadOnlyList<VisitSegment> Segments => _segments;

    /// <summary>Puts the visit on the clock: the service's steps one after another from <paramref name="startsAt"/>.</summary>
    /// <param name="segmentIds">One new id for each step.</param>
    /// <exception cref="Refusal">Called off or over already.</exception>
    public void Place(ServiceKind service, Instant startsAt, Guid? chairId, Guid? personId, Salon salon, IReadOnlyList<Guid> segmentIds) =>
        Place([.. service.Steps.OrderBy(s => s.Position).Select(s => (s.Kind, s.Minutes))], startsAt, chairId, personId, salon, segmentIds);

    /// <inheritdoc cref="Place(ServiceKind, Instant, Guid?, Guid?, Salon, IReadOnlyList{Guid})"/>
    public void Place(
        IReadOnlyList<(Chairs.SegmentKind Kind, int Minutes)> steps,
        Instant startsAt,
        Guid? chairId,
        Guid? personId,
        Salon salon,
        IReadOnlyList<Guid> segmentIds
    )
    {
        if (State is not (VisitState.Booked or VisitState.Arrived))
            throw new Refusal("This visit is {0}: it cannot be moved.", State);
        SalonId = salon.Id;
        ChairId = chairId;
        PersonId = personId;
        StartsAt = startsAt;
        Day = salon.DayOf(startsAt);
        _segments.Clear();
        var at = startsAt;
        for (var i = 0; i < steps.Count; i++)
        {
            var end = at + Duration.FromMinutes(steps[i].Minutes);
            _segments.Add(new VisitSegment(segmentIds[i], Id, i + 1, steps[i].Kind, personId, at, end));
            at = end;
        }
        EndsAt = at;
        HoldsChair = chairId is not null;
    }

    public void Remark(string? note) => Note = string.IsNullOrWhiteSpace(note) ? null : note.Trim();

    public void Arrive() => Move(VisitState.Arrived, VisitState.Booked);

    public void Begin() => Move(VisitState.InChair, VisitState.Booked, VisitState.Arrived);

    public void Finish() => Move(VisitState.Done, VisitState.Booked, VisitState.Arrived, VisitState.InChair);

    /// <exception cref="Refusal">It is over or called off already.</exception>
    public void Cancel()
    {
        Move(VisitState.Cancelled, VisitState.Booked, VisitState.Arrived);
        Release();
    }

    public void MarkDidNotCome()
    {
        Move(VisitState.DidNotCome, VisitState.Booked);
        Release();
    }

    /// <summary>Takes over the state and key an old book gives.</summary>
    public void Restore(VisitState state, string bookKey)
    {
        State = state;
        BookKey = bookKey;
        if (state is VisitState.Cancelled or VisitState.DidNotCome)
            Release();
    }

    private void Move(VisitState to, params ReadOnlySpan<VisitState> from)
    {
        if (!from.Contains(State))
            throw new Refusal("This visit is {0} already.", State);
        State = to;
    }

    private void Release()
    {
        HoldsChair = false;
        foreach (var segment in _segments)
            segment.Release();
    }
}
