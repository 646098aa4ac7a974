namespace HairClinic.Domain.Wear;

/// <summary>How hard each verdict is.</summary>
public static class PatchVerdicts
{
    public static bool Blocks(this PatchVerdict verdict) => verdict >= PatchVerdict.NeverTested;

    public static bool Warns(this PatchVerdict verdict) =>
        verdict is PatchVerdict.SecondReadingToCome or PatchVerdict.SecondReadingMissed or PatchVerdict.FirstReadingMissed;
}
