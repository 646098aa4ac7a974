namespace HairClinic.Domain.Clients;

/// <summary>What the skin under a bond looks like today.</summary>
public enum ScalpSign
{
    Broken,
    Infected,
    Sunburnt,
    FreshlyOperated,
    Irritated,
}
