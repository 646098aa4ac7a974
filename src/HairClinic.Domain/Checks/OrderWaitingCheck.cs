using HairClinic.Domain.HairSystems;

namespace HairClinic.Domain.Checks;

/// <summary>Whether an order is counted on, and how long it holds that it is still on its way.</summary>
public static class OrderWaitingCheck
{
    /// <summary>Then it is asked again.</summary>
    public const int Days = 28;

    /// <summary>It is on order for so long that it may be forgotten, and nobody has said yet that it is not: it is not counted on.</summary>
    /// <param name="askedSince">The wait that somebody was asked about and has not answered: since this day; null where there is none.</param>
    public static bool MayBeForgotten(HairSystem unit, LocalDate? askedSince) =>
        unit.State.IsInFlight() && askedSince is { } since && since == unit.WaitingSince;

    /// <param name="saidOn">The last day on which somebody said so; null where nobody did.</param>
    public static bool StillHolds(LocalDate? saidOn, LocalDate today) => today < saidOn?.PlusDays(Days);
}
