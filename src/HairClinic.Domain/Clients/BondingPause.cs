using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Clients;

/// <summary>What a client's operations, scans and treatments say about making a bond on a day.</summary>
/// <remarks>
/// The take-down is due before the event's first day, so on the day before it no bond is made any more. On the days before that a bond
/// could be made and would soon come off again: closer than the practice's days before an event somebody has to want it. From the first
/// day on there is no bond until a person records that bonding may begin again; that the event is over does not say so.
/// </remarks>
/// <param name="Degree">How much speaks against a bond.</param>
/// <param name="From">The event's first day.</param>
public readonly record struct BondingPause(BondingPauseDegree Degree, LocalDate From)
{
    /// <param name="daysBeforeEvent">The practice's days between a rebond and an event it makes ready for.</param>
    /// <returns>What speaks most against it; null where nothing does.</returns>
    public static BondingPause? On(IEnumerable<LifeEvent> events, LocalDate day, int daysBeforeEvent) =>
        events
            .Select(planned => Of(planned, day, daysBeforeEvent))
            .OfType<BondingPause>()
            .OrderByDescending(pause => pause.Degree)
            .ThenBy(pause => pause.From)
            .Select(pause => (BondingPause?)pause)
            .FirstOrDefault();

    /// <summary>As <see cref="On(IEnumerable{LifeEvent}, LocalDate, int)"/>, for a service of that purpose: one that puts nothing on the scalp is none of its business.</summary>
    public static BondingPause? On(IEnumerable<LifeEvent> events, ServicePurpose purpose, LocalDate day, int daysBeforeEvent) =>
        ClearanceRules.Bonding.Contains(purpose) ? On(events, day, daysBeforeEvent) : null;

    /// <exception cref="Refusal">
    /// A bond was made on a day on which there is none, or so soon before the event that somebody has to say that it is wanted.
    /// </exception>
    /// <param name="wanted">Whoever bonds was shown that it comes off again soon, and means it.</param>
    public void RequireBondable(bool wanted)
    {
        if (Degree == BondingPauseDegree.Begun)
            throw new Refusal("No bond for this client since {0}, until somebody allows bonding again.", From);
        if (Degree == BondingPauseDegree.Eve)
            throw new Refusal("No bond any more: the unit has to be off before {0}.", From);
        if (!wanted)
            throw new Refusal(
                "This bond would have to come off again before {0}. Say that it is wanted all the same, or do not bond.",
                From
            );
    }

    private static BondingPause? Of(LifeEvent planned, LocalDate day, int daysBeforeEvent) =>
        planned.KeepsFromBondingOn(day) ? new BondingPause(BondingPauseDegree.Begun, planned.From)
        : !planned.PausesBonding || day >= planned.From ? null
        : day == planned.From.PlusDays(-1) ? new BondingPause(BondingPauseDegree.Eve, planned.From)
        : day > planned.From.PlusDays(-daysBeforeEvent) ? new BondingPause(BondingPauseDegree.Soon, planned.From)
        : null;
}

/// <summary>How much speaks against a bond, the least first.</summary>
public enum BondingPauseDegree
{
    /// <summary>It would have to come off again within days.</summary>
    Soon,

    /// <summary>The event begins tomorrow.</summary>
    Eve,

    /// <summary>The event has begun, and nobody has recorded that bonding may begin again.</summary>
    Begun,
}
