namespace HairClinic.Domain.LoadAhead;

public enum ReckoningStage
{
    Reading,
    FittingHold,
    FittingLife,
    Planning,
    Storing,
}
