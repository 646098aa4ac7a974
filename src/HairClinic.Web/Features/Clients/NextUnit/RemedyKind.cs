namespace HairClinic.Web.Features.Clients;

/// <summary>In the order in which they help.</summary>
public enum RemedyKind
{
    Spare,

    /// <summary>Kept for an emergency, or found worn out.</summary>
    WornSpare,

    /// <summary>A ready-made unit.</summary>
    OffTheShelf,

    Repair,

    /// <summary>A hope, not a date.</summary>
    Rush,

    AskTheWorkshop,
}
