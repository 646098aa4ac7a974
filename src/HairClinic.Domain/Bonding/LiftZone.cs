namespace HairClinic.Domain.Bonding;

/// <summary>Where an edge came up.</summary>
public enum LiftZone
{
    Front,
    Temples,
    Sides,
    Crown,
    Nape,
    Other,
}
