namespace HairClinic.Domain.LoadAhead;

/// <summary>
/// One run over the practice's records: fits hold and life anew, then every client's next order and the weeks ahead. Asked for
/// each night and by hand; it reports its progress and can be stopped.
/// </summary>
public sealed class Recalculation : PracticeOwned
{
    private Recalculation() { }

    /// <param name="askedBy">Null for the nightly one.</param>
    public Recalculation(Guid id, Guid? askedBy, Instant askedAt) => (Id, AskedBy, AskedAt) = (id, askedBy, askedAt);

    public Guid? AskedBy { get; private set; }
    public Instant AskedAt { get; private set; }
    public Instant? StartedAt { get; private set; }
    public Instant? EndedAt { get; private set; }
    public RecalculationState State { get; private set; } = RecalculationState.Waiting;
    public RecalculationStage Stage { get; private set; } = RecalculationStage.Reading;

    /// <summary>Clients done, of <see cref="Total"/>.</summary>
    public int Done { get; private set; }

    public int Total { get; private set; }

    /// <summary>Somebody wants it to stop; it does so before the next few clients.</summary>
    public bool StopAsked { get; private set; }

    /// <summary>A short description of the error.</summary>
    public string? Fault { get; private set; }

    public bool IsOver => EndedAt is not null;

    public void Start(Instant now) => (State, StartedAt) = (RecalculationState.Running, now);

    public void ReportProgress(RecalculationStage stage, int done, int total) => (Stage, Done, Total) = (stage, done, total);

    /// <exception cref="Refusal">It is over.</exception>
    public void AskToStop() => StopAsked = !IsOver ? true : throw new Refusal("It has ended already.");

    public void Finish(RecalculationState state, Instant now, string? fault = null) => (State, EndedAt, Fault) = (state, now, fault);
}

public enum RecalculationStage
{
    Reading,
    FittingHold,
    FittingLife,
    Planning,
    Storing,
}

public enum RecalculationState
{
    Waiting,
    Running,
    Done,
    Stopped,
    Failed,
}
