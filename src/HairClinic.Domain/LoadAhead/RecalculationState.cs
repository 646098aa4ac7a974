namespace HairClinic.Domain.LoadAhead;

public enum RecalculationState
{
    Waiting,
    Running,
    Done,
    Stopped,
    Failed,
}
