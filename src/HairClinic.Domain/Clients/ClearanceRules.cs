using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Clients;

/// <summary>
/// Turns health answers into clearances. Common practice, no source; product labels, local codes and
/// licensed practice come first.
/// </summary>
/// <remarks>
/// A block on bonding has no last day: skin does not heal by the calendar, so it holds until somebody has looked again and
/// saved new answers.
/// </remarks>
public static class ClearanceRules
{
    /// <summary>The services that put something on the scalp.</summary>
    public static readonly IReadOnlyList<ServicePurpose> Bonding =
    [
        ServicePurpose.FirstFitting,
        ServicePurpose.Rebond,
        ServicePurpose.FixLift,
    ];

    private static readonly ScalpSign[] NoBondingOn = [ScalpSign.Broken, ScalpSign.Infected, ScalpSign.Sunburnt, ScalpSign.FreshlyOperated];

    private static readonly LossSign[] LookTwiceAt = [LossSign.Painful, LossSign.Scaling, LossSign.Pustular];

    public static IReadOnlyList<ClearanceSpec> ClearancesFor(HealthHistory history, LocalDate answeredOn)
    {
        var facts = history
            .Reactions.Select(r => r.ProductId)
            .OfType<Guid>()
            .Distinct()
            .Select(product => new ClearanceSpec(product, Purpose: null, answeredOn, Until: null, ClearanceSeverity.Block))
            .ToList();
        var blocked =
            history.ScalpToday.Any(NoBondingOn.Contains)
            || (history.UnderRadiotherapy || history.UnderChemotherapy) && !history.CareTeamAgreed;
        var warned =
            history.ScalpToday.Contains(ScalpSign.Irritated)
            || history.Signs.Any(LookTwiceAt.Contains)
            || history.Reactions.Any(r => r.ProductId is null && !string.IsNullOrWhiteSpace(r.To))
            || !string.IsNullOrWhiteSpace(history.Allergies);
        if (blocked || warned)
            facts.AddRange(
                Bonding.Select(purpose => new ClearanceSpec(
                    ProductId: null,
                    purpose,
                    answeredOn,
                    Until: null,
                    blocked ? ClearanceSeverity.Block : ClearanceSeverity.Warn
                ))
            );
        return facts;
    }
}

/// <summary>Signs of hair loss that need a physician before a stylist. Common practice; the practice does not diagnose.</summary>
public enum LossSign
{
    Sudden,
    Patchy,
    Painful,
    Scaling,
    Pustular,
    Scarring,
    InChild,
    ChangingMole,
}

/// <summary>What the skin under a bond looks like today.</summary>
public enum ScalpSign
{
    Broken,
    Infected,
    Sunburnt,
    FreshlyOperated,
    Irritated,
}
