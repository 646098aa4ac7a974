namespace HairClinic.Domain.Wear;

/// <summary>How long a bond of one base, adhesive and attachment is expected to hold: whole weeks, earliest and latest.</summary>
/// <remarks>
/// Weeks are calendar weeks on local dates, never 7 × 24 h, so a clock change never moves a date. Both ends belong
/// to the window: a bond is overdue from the day after <see cref="Closes"/>.
/// </remarks>
public readonly record struct HoldWindow
{
    public const int LongestWeeks = 26;

    /// <param name="earliestWeeks">1 to <paramref name="latestWeeks"/>.</param>
    /// <param name="latestWeeks">At most 26.</param>
    /// <exception cref="ArgumentOutOfRangeException">1 ≤ earliest ≤ latest ≤ 26 does not hold.</exception>
    public HoldWindow(int earliestWeeks, int latestWeeks)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(earliestWeeks, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(latestWeeks, earliestWeeks);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(latestWeeks, LongestWeeks);
        EarliestWeeks = earliestWeeks;
        LatestWeeks = latestWeeks;
    }

    public int EarliestWeeks { get; }

    public int LatestWeeks { get; }

    /// <summary>The first day of the window of a bond made on that day.</summary>
    public LocalDate Opens(LocalDate appliedOn) => appliedOn.PlusWeeks(EarliestWeeks);

    /// <summary>The last day of the window of a bond made on that day.</summary>
    public LocalDate Closes(LocalDate appliedOn) => appliedOn.PlusWeeks(LatestWeeks);
}
