namespace HairClinic.Domain.HairSystems;

/// <summary>What was mended on a unit. A repair is no end of its life; from its day on it tells something about what is left.</summary>
public enum RepairKind
{
    NewFront,
    Reknotted,
    Rim,
    Other,
}
