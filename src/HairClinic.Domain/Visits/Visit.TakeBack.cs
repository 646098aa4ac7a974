namespace HairClinic.Domain.Visits;

public sealed partial class Visit
{
    /// <summary>Undoes the last word about it: a slip of the finger, or a client who comes after all. It takes its chair and hands again.</summary>
    /// <remarks>Somebody else may hold them by now: the database then refuses.</remarks>
    /// <exception cref="Refusal">It is still booked, or over.</exception>
    public void TakeBack()
    {
        var released = !State.IsLive();
        State = State switch
        {
            VisitState.InChair => VisitState.Arrived,
            VisitState.Arrived or VisitState.DidNotCome or VisitState.Cancelled => VisitState.Booked,
            _ => throw new Refusal("This visit is {0}: there is nothing to take back.", State),
        };
        // One that stood aside goes on doing so; one that was released wants its client back.
        HoldsClient |= released;
        HoldsChair = ChairId is not null;
        foreach (var segment in _segments)
            segment.Occupy();
    }
}
