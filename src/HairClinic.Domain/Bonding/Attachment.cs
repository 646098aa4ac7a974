namespace HairClinic.Domain.Bonding;

/// <summary>How a unit is held to the head.</summary>
public enum Attachment
{
    Liquid,
    Tape,
    Mixed,
    Clips,
}
