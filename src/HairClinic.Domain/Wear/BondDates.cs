namespace HairClinic.Domain.Wear;

/// <summary>The dates that decide where a bond stands.</summary>
/// <param name="Opens">The first day of its due window.</param>
/// <param name="Closes">The last day of its due window.</param>
public readonly record struct BondDates(LocalDate Opens, LocalDate Closes)
{
    /// <summary>When the bond was finished, if known: old books have only the day, and then no cure is counted down.</summary>
    public Instant? AppliedAt { get; init; }

    public Cure Cure { get; init; }

    /// <summary>The day a lift was noticed, or reported where that day is not known.</summary>
    public LocalDate? LiftedOn { get; init; }

    public LocalDate? RemovedOn { get; init; }

    /// <summary>The bond's state on a civil day of the salon.</summary>
    /// <param name="today">A lift or removal after this day has not happened yet.</param>
    /// <param name="now">The moment asked about, for the cure; leave out for a state by date alone.</param>
    public BondState StateOn(LocalDate today, Instant? now = null) =>
        this switch
        {
            { RemovedOn: { } removed } when removed <= today => BondState.Removed,
            { LiftedOn: { } lifted } when lifted <= today => BondState.Lifted,
            { AppliedAt: { } applied } when now is { } moment && !Cure.IsOver(applied, moment) => BondState.Curing,
            _ when today > Closes => BondState.Overdue,
            _ when today >= Opens => BondState.WindowOpen,
            _ => BondState.Held,
        };
}

/// <summary>Where a bond stands on a day.</summary>
public enum BondState
{
    /// <summary>Fresh: no water, sweat or sport yet. Known only when the instant of application is.</summary>
    Curing,

    /// <summary>Sound, and before its window.</summary>
    Held,

    /// <summary>Sound, and inside its window, both ends included.</summary>
    WindowOpen,

    /// <summary>Sound as far as known, and past the window's last day.</summary>
    Overdue,

    /// <summary>An edge is known to have come up; the unit is still on the head.</summary>
    Lifted,

    /// <summary>Taken down.</summary>
    Removed,
}
