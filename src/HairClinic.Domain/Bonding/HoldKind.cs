namespace HairClinic.Domain.Bonding;

/// <summary>What a bond tells about how long it held.</summary>
public enum HoldKind
{
    /// <summary>It lifted on a known day.</summary>
    Exact,

    /// <summary>It lifted after the lower day and no later than the upper.</summary>
    Between,

    /// <summary>It had not lifted by the lower day; when it would have is not known.</summary>
    AtLeast,
}
