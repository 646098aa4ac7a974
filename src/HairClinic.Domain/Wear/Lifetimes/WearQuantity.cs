namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What is learnt from the practice's own records.</summary>
public enum WearQuantity
{
    /// <summary>Days from the bond until an edge comes up.</summary>
    Hold,

    /// <summary>Worn days until a unit is worn out.</summary>
    Life,
}
