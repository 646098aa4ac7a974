namespace HairClinic.Domain.Wear;

/// <summary>How long a fresh bond must stay dry and still: no water, sweat or sport.</summary>
/// <remarks>
/// Elapsed time on instants. A night on which the clocks change moves the wall time at which the cure ends, never its
/// length. The default value is the usual 24 hours; a product's label may ask for more and then governs.
/// </remarks>
public readonly record struct Cure
{
    public const int ShortestHours = 24;
    public const int LongestHours = 48;

    private readonly int _beyondShortest;

    /// <param name="hours">24 to 48.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 24 or more than 48 hours.</exception>
    public Cure(int hours)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(hours, ShortestHours);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hours, LongestHours);
        _beyondShortest = hours - ShortestHours;
    }

    public int Hours => ShortestHours + _beyondShortest;

    public Duration Length => Duration.FromHours(Hours);

    public Instant EndsAt(Instant appliedAt) => appliedAt + Length;

    /// <summary>What is left of the cure; zero once it is over.</summary>
    public Duration Remaining(Instant appliedAt, Instant now) => Duration.Max(Duration.Zero, EndsAt(appliedAt) - now);

    public bool IsOver(Instant appliedAt, Instant now) => now >= EndsAt(appliedAt);

    /// <summary>The first day wholly after the cure of a bond made at any hour of a day.</summary>
    /// <remarks>
    /// For 24 hours the second day after. Days the zone skipped do not count. Only a bond made in the last hour before
    /// midnight of a night that loses an hour runs over, by that hour; the visit itself is checked against the instant.
    /// </remarks>
    public LocalDate FirstClearDay(LocalDate appliedOn, OpeningDays opening) =>
        CivilDayNumber.Date(FirstClearDay(CivilDayNumber.Number(appliedOn), opening));

    internal int FirstClearDay(int appliedOn, OpeningDays opening) => opening.AddCalendarDays(appliedOn, (Hours + 23) / 24 + 1);
}
