namespace HairClinic.Domain.Wear;

/// <summary>What a bonding visit rests on while its patch test runs.</summary>
public enum VisitFooting
{
    /// <summary>The test allows it as things stand.</summary>
    Firm,

    /// <summary>Kept for the client until the first reading, which falls before it.</summary>
    Held,

    /// <summary>The test cannot allow it: the desk must find another day, product or plan.</summary>
    BackToDesk,
}
