namespace HairClinic.Domain.Visits;

/// <summary>A client's visit: booked, kept or called off. It takes a chair and, in its hands-on segments, a person.</summary>
public sealed partial class Visit : PracticeOwned
{
    private readonly List<VisitSegment> _segments = [];

    private Visit() { }

    public Visit(Guid id, Guid clientId, Guid salonId, Guid serviceKindId) =>
        (Id, ClientId, SalonId, ServiceKindId) = (id, clientId, salonId, serviceKindId);

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

    /// <summary>Whether it takes its client's time; see <see cref="ClientOccupancyRule"/>.</summary>
    public bool HoldsClient { get; private set; }

    public string? Note { get; private set; }

    /// <summary>The row of the old book it was imported from, so that importing the same book twice changes nothing.</summary>
    public string? BookKey { get; private set; }

    public IReadOnlyList<VisitSegment> Segments => _segments;

    /// <summary>Puts the visit on the clock: the service's steps one after another from <paramref name="startsAt"/>.</summary>
    /// <param name="segmentIds">One new id for each step.</param>
    /// <exception cref="Refusal">Called off or over already.</exception>
    public void PutAt(ServiceKind service, Instant startsAt, Guid? chairId, Guid? personId, Salon salon, IReadOnlyList<Guid> segmentIds) =>
        PutAt([.. service.Steps.OrderBy(s => s.Position).Select(s => (s.Kind, s.Minutes))], startsAt, chairId, personId, salon, segmentIds);

    /// <inheritdoc cref="PutAt(ServiceKind, Instant, Guid?, Guid?, Salon, IReadOnlyList{Guid})"/>
    public void PutAt(
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
            _segments.Add(new VisitSegment(segmentIds[i], Id, i + 1, steps[i].Kind, chairId, personId, at, end));
            at = end;
        }
        EndsAt = at;
        HoldsChair = chairId is not null;
        HoldsClient = true;
    }

    public void SetNote(string? note) => Note = note.NullIfBlank();

    /// <param name="today">The salon's day: arriving early on the day counts, on an earlier day it does not.</param>
    /// <exception cref="Refusal">It is over or called off already, or its day has not come.</exception>
    public void Arrive(LocalDate today)
    {
        RequireDay(today);
        Move(VisitState.Arrived, VisitState.Booked);
    }

    /// <inheritdoc cref="Arrive"/>
    public void Begin(LocalDate today)
    {
        RequireDay(today);
        Move(VisitState.InChair, VisitState.Booked, VisitState.Arrived);
    }

    /// <inheritdoc cref="Arrive"/>
    public void Finish(LocalDate today)
    {
        RequireDay(today);
        Move(VisitState.Done, VisitState.Booked, VisitState.Arrived, VisitState.InChair);
        HoldsClient = false;
    }

    /// <exception cref="Refusal">It is over or called off already.</exception>
    public void Cancel()
    {
        Move(VisitState.Cancelled, VisitState.Booked, VisitState.Arrived);
        Release();
    }

    /// <exception cref="Refusal">Its time has not come, or somebody wrote more of it already.</exception>
    public void MarkDidNotCome(Instant now)
    {
        if (now < StartsAt)
            throw new Refusal("This visit’s time has not come yet. If they will not come, call it off.");
        Move(VisitState.DidNotCome, VisitState.Booked);
        Release();
    }

    /// <summary>Takes over the state and key an old book gives.</summary>
    /// <param name="today">The salon's day: imported visits in the past take up nobody's time.</param>
    public void ImportState(VisitState state, string bookKey, LocalDate today)
    {
        // A visit that stood aside still does.
        HoldsClient = state.IsLive() && Day >= today && (HoldsClient || !State.IsLive());
        State = state;
        BookKey = bookKey;
        if (state is VisitState.Cancelled or VisitState.DidNotCome)
            Release();
    }

    internal void FreeClientTime() => HoldsClient = false;

    private void RequireDay(LocalDate today)
    {
        if (Day > today)
            throw new Refusal("This visit is on {0}, and that day has not come. If they came today, move it to today first.", Day);
    }

    private void Move(VisitState to, params ReadOnlySpan<VisitState> from)
    {
        if (!from.Contains(State))
            throw new Refusal("This visit is {0} already.", State);
        State = to;
    }

    private void Release()
    {
        (HoldsChair, HoldsClient) = (false, false);
        foreach (var segment in _segments)
            segment.Release();
    }
}

public enum VisitState
{
    Booked,
    Arrived,
    InChair,
    Done,
    Cancelled,
    DidNotCome,
}
