namespace HairClinic.Domain.LoadAhead;

public enum RecalculationStage
{
    Reading,
    FittingHold,
    FittingLife,
    Planning,
    Storing,
}
