namespace HairClinic.Domain.Replacement;

/// <summary>A client who wears nothing for longer than this is taken to have left. Common practice, no source.</summary>
public static class LapsedClientRule
{
    public const int AfterDays = 60;

    /// <param name="lastWornOn">The last day on which something was on the head; null for who never wore anything.</param>
    public static bool HasLapsed(LocalDate? lastWornOn, LocalDate today) => !(lastWornOn >= today.PlusDays(-AfterDays));
}
