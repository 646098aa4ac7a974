using System.Text.Json.Serialization;

namespace HairClinic.Domain.Wear;

/// <summary>What a product's patch test says about bonding with it at a given moment. Stored by name.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<PatchVerdict>))]
public enum PatchVerdict
{
    /// <summary>Both readings clear and in date.</summary>
    Clear,

    /// <summary>Warn: the first reading is clear, the second is still to come.</summary>
    SecondReadingToCome,

    /// <summary>Warn: the first reading is clear; the second was due and was not made.</summary>
    SecondReadingMissed,

    /// <summary>Warn: only the second reading was made, and is clear.</summary>
    FirstReadingMissed,

    /// <summary>Block: this product was never tried on this client.</summary>
    NeverTested,

    /// <summary>Block: the skin reacted. Time does not lift this.</summary>
    Reacted,

    /// <summary>Block: older than its validity on the visit's day.</summary>
    Expired,

    /// <summary>Block: the first reading cannot be made before then.</summary>
    TooSoon,

    /// <summary>Block: the time for the first reading has come, but nobody has recorded one.</summary>
    NotRead,
}
