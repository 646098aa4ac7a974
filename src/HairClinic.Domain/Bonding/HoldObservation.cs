using NodaTime;

namespace HairClinic.Domain.Bonding;

/// <summary>How long one bond held, as far as it is known: days from application until an edge came up.</summary>
/// <remarks>
/// A bond that comes off sound held <em>at least</em> that long; taking it as exactly that long would make every later
/// estimate drift shorter. Days are civil days in the salon's zone, as stored with the bond.
/// </remarks>
/// <param name="Lower">Days; for <see cref="HoldKind.Between"/> not included, else included.</param>
/// <param name="Upper">Days, included; null where there is no upper end.</param>
public readonly record struct HoldObservation(HoldKind Kind, int Lower, int? Upper)
{
    /// <param name="today">For a bond still on the head; a removal or lift is taken as it was told.</param>
    public static HoldObservation Of(Bond bond, LocalDate today)
    {
        if (bond.Lift is { LiftedOn: { } day })
            return LiftedBy(bond, bond.AppliedOn, day, dayIsKnown: true);
        if (bond.Lift is { } lift)
            return LiftedBy(bond, bond.LastSoundOn ?? bond.AppliedOn, lift.ReportedOn, dayIsKnown: false);
        // An old book may give the reason without a lift of its own.
        if (bond is { RemovedOn: { } came, RemovedBecause: RemovalReason.Lifted })
            return LiftedBy(bond, bond.LastSoundOn ?? bond.AppliedOn, came, dayIsKnown: false);
        return new HoldObservation(HoldKind.AtLeast, Math.Max(0, Days(bond, bond.RemovedOn ?? today)), null);
    }

    private static HoldObservation LiftedBy(Bond bond, LocalDate lastSound, LocalDate by, bool dayIsKnown)
    {
        var upper = Days(bond, by);
        // Somewhere within the day of application: after nothing, and before the first day was over.
        if (upper == 0)
            return new HoldObservation(HoldKind.Between, 0, 1);
        var lower = Days(bond, lastSound);
        // Seen sound and found up on one civil day pins the day down.
        return dayIsKnown || lower >= upper
            ? new HoldObservation(HoldKind.Exact, upper, upper)
            : new HoldObservation(HoldKind.Between, lower, upper);
    }

    private static int Days(Bond bond, LocalDate day) => Period.DaysBetween(bond.AppliedOn, day);
}
