namespace HairClinic.Domain.Bonding;

/// <summary>How long one bond held, as far as it is known: days from application until an edge came up.</summary>
/// <remarks>
/// A bond that comes off sound held <em>at least</em> that long; taking it as exactly that long would make every later
/// estimate drift shorter. Days are civil days in the salon's zone, as stored with the bond.
/// </remarks>
public readonly record struct HoldObservation
{
    /// <param name="lower">Days, 0 or more; for <see cref="HoldCensoring.Between"/> not included, else included.</param>
    /// <param name="upper">Days, included: as many where the day is known, more where it lies between, none where there is no upper end.</param>
    /// <exception cref="ArgumentException">No hold is like that.</exception>
    public HoldObservation(HoldCensoring kind, int lower, int? upper)
    {
        var isOne = kind switch
        {
            HoldCensoring.Exact => upper == lower,
            HoldCensoring.Between => upper > lower,
            _ => upper is null,
        };
        if (lower < 0 || !isOne)
            throw new ArgumentException($"No hold is {kind} of {lower} to {upper} days.", nameof(upper));
        (Kind, Lower, Upper) = (kind, lower, upper);
    }

    public HoldCensoring Kind { get; }

    public int Lower { get; }

    public int? Upper { get; }

    /// <param name="today">For a bond still on the head; a removal or lift is taken as recorded.</param>
    public static HoldObservation From(Bond bond, LocalDate today) =>
        From(bond.AppliedOn, bond.LastSoundOn, bond.Lift, bond.RemovedOn, bond.RemovedBecause, today);

    internal static HoldObservation From(
        LocalDate appliedOn,
        LocalDate? lastSoundOn,
        Lift? lift,
        LocalDate? removedOn,
        RemovalReason? because,
        LocalDate today
    )
    {
        if (lift is { LiftedOn: { } day })
            return LiftedBy(appliedOn, appliedOn, day, dayIsKnown: true);
        if (lift is not null)
            return LiftedBy(appliedOn, LastSoundBefore(lift), lift.LatestOn ?? lift.ReportedOn, dayIsKnown: false);
        // An old book may give the reason without a lift of its own.
        if (removedOn is { } came && because?.EndedHold() == true)
            return LiftedBy(appliedOn, lastSoundOn ?? appliedOn, came, dayIsKnown: false);
        var until = because == RemovalReason.NotSeenAgain ? lastSoundOn ?? appliedOn : removedOn ?? today;
        return new HoldObservation(HoldCensoring.AtLeast, Math.Max(0, Period.DaysBetween(appliedOn, until)), null);

        // Whoever remembers about when has seen it sound until then.
        LocalDate LastSoundBefore(Lift told) => LocalDate.Max(lastSoundOn ?? appliedOn, told.EarliestOn ?? appliedOn);
    }

    private static HoldObservation LiftedBy(LocalDate appliedOn, LocalDate lastSound, LocalDate by, bool dayIsKnown)
    {
        var upper = Period.DaysBetween(appliedOn, by);
        // Somewhere within the day of application: after nothing, and before the first day was over.
        if (upper == 0)
            return new HoldObservation(HoldCensoring.Between, 0, 1);
        var lower = Period.DaysBetween(appliedOn, lastSound);
        // Seen sound and found up on one civil day pins the day down.
        return dayIsKnown || lower >= upper
            ? new HoldObservation(HoldCensoring.Exact, upper, upper)
            : new HoldObservation(HoldCensoring.Between, lower, upper);
    }
}

/// <summary>What a bond tells about how long it held.</summary>
public enum HoldCensoring
{
    /// <summary>It lifted on a known day.</summary>
    Exact,

    /// <summary>It lifted after the lower day and no later than the upper.</summary>
    Between,

    /// <summary>It had not lifted by the lower day; when it would have is not known.</summary>
    AtLeast,
}
