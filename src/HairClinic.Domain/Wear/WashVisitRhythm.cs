namespace HairClinic.Domain.Wear;

/// <summary>How often a client comes to be washed and styled between rebonds: every 7 or 14 days, editable per client.</summary>
public readonly record struct WashVisitRhythm
{
    /// <summary>A wash this close to a rebond is done in the same visit.</summary>
    public const int OneTripDays = 3;

    public const int LongestDays = 56;

    /// <param name="days">1 to 56.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 or more than 56 days.</exception>
    public WashVisitRhythm(int days)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(days, LongestDays);
        Days = days;
    }

    public static WashVisitRhythm Weekly => new(7);

    public static WashVisitRhythm Fortnightly => new(14);

    public int Days { get; }

    /// <summary>The next wash-and-style of a client who wears a bond.</summary>
    /// <param name="lastWashOn">The last such visit, if any since the bond was made; otherwise the bond's day counts.</param>
    /// <param name="appliedOn">The day the bond was made.</param>
    /// <param name="cure">Never inside it.</param>
    /// <param name="rebondDueOn">
    /// The bond's due day. A wash that would fall three days before it or later is merged into the rebond: the unit is
    /// washed at that visit and the rhythm starts again from it.
    /// </param>
    /// <param name="opening">A wash moves to the nearest open day, up to three days off, the earlier on a tie.</param>
    /// <exception cref="InvalidOperationException">The rhythm was never set.</exception>
    public WashVisitDay Next(LocalDate? lastWashOn, LocalDate appliedOn, Cure cure, LocalDate rebondDueOn, OpeningDays opening)
    {
        if (Days == 0)
            throw new InvalidOperationException("A wash rhythm has a number of days.");
        var cured = cure.FirstClearDay(appliedOn, opening);
        var last = lastWashOn is { } wash && wash > appliedOn ? wash : appliedOn;
        var wanted = LocalDate.Max(last.PlusDays(Days), cured);
        if (IsOneTrip(wanted))
            return new(rebondDueOn, true);
        var earliest = LocalDate.Max(wanted.PlusDays(-OneTripDays), cured);
        var on = opening.Nearest(wanted, earliest, wanted.PlusDays(OneTripDays)) ?? wanted;
        return IsOneTrip(on) ? new(rebondDueOn, true) : new(on, false);

        bool IsOneTrip(LocalDate day) => day >= rebondDueOn.PlusDays(-OneTripDays);
    }
}

/// <summary>When a client is next washed and styled.</summary>
/// <param name="On">The day to book.</param>
/// <param name="WithRebond">One trip: it is done at the rebond due that day, and needs no visit of its own.</param>
public readonly record struct WashVisitDay(LocalDate On, bool WithRebond);
