namespace HairClinic.Domain.Checks;

/// <summary>How long it holds that an order is still on its way.</summary>
public static class OrderWaitingCheck
{
    /// <summary>Then it is asked again.</summary>
    public const int Days = 28;

    /// <param name="saidOn">The last day on which somebody said so; null where nobody did.</param>
    public static bool StillHolds(LocalDate? saidOn, LocalDate today) => today < saidOn?.PlusDays(Days);
}
