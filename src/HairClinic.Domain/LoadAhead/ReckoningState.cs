namespace HairClinic.Domain.LoadAhead;

public enum ReckoningState
{
    Waiting,
    Running,
    Done,
    Stopped,
    Failed,
}
