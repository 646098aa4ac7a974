namespace HairClinic.Domain.Wear;

/// <summary>What was seen where a product was tried on the skin.</summary>
public enum PatchReading
{
    NotRead,
    Clear,
    Reaction,
}
