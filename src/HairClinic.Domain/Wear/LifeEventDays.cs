namespace HairClinic.Domain.Wear;

/// <summary>Days the bond must last to, or be off before, on which the client may be away.</summary>
/// <remarks>Both ends are included. What the event is stays with the client: the rule needs only its days and what they ask.</remarks>
public readonly record struct LifeEventDays
{
    /// <summary>Days between a rebond and the event it makes ready for (common practice, no source).</summary>
    public const int UsualDaysAhead = 5;

    /// <summary>The chance, in percent, that a bond is sound to the end of a celebration (common practice, no source).</summary>
    public const int UsualCelebrationPercent = 99;

    /// <summary>The chance, in percent, that a bond is sound to the end of a journey (common practice, no source).</summary>
    public const int UsualJourneyPercent = 90;

    private readonly byte _soundPercent;
    private readonly byte _daysAhead;

    private LifeEventDays(LocalDate from, LocalDate through, int daysAhead, bool isAway, int soundPercent)
    {
        if (through < from)
            throw new ArgumentOutOfRangeException(nameof(through), "An event ends on or after the day it begins.");
        ArgumentOutOfRangeException.ThrowIfNegative(daysAhead);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(daysAhead, 60);
        ArgumentOutOfRangeException.ThrowIfNegative(soundPercent);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(soundPercent, 100);
        (From, Through, _daysAhead, IsAway, _soundPercent) = (from, through, (byte)daysAhead, isAway, (byte)soundPercent);
    }

    public LocalDate From { get; }

    public LocalDate Through { get; }

    /// <summary>No rebond falls closer before the event than this many days; 0 to 60.</summary>
    public int DaysAhead => _daysAhead;

    /// <summary>The client cannot come on these days, so nothing falls due on them.</summary>
    public bool IsAway { get; }

    /// <summary>The bond has to be off before these days.</summary>
    public bool IsTakeDown { get; private init; }

    /// <summary>
    /// The least chance, in thousandths, that a bond is sound to <see cref="Through"/>; with less a rebond comes first. 0 where the
    /// bond need not last.
    /// </summary>
    public int SoundPerMille => 10 * _soundPercent;

    /// <summary>Days to be ready for.</summary>
    /// <param name="soundPercent">The least chance that the bond is sound to the last of them, in percent; 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">It ends before it begins, or a number is out of its range.</exception>
    public static LifeEventDays ToBeReadyFor(
        LocalDate from,
        LocalDate through,
        int soundPercent,
        int daysAhead = UsualDaysAhead,
        bool away = false
    ) => new(from, through, daysAhead, away, soundPercent);

    /// <summary>One day to be ready for as for a celebration, on which the client is within reach.</summary>
    public static LifeEventDays SingleDay(LocalDate day, int daysAhead = UsualDaysAhead) =>
        ToBeReadyFor(day, day, UsualCelebrationPercent, daysAhead);

    /// <summary>A journey to be ready for, on which the client cannot come.</summary>
    public static LifeEventDays Away(LocalDate from, LocalDate through, int daysAhead = UsualDaysAhead) =>
        ToBeReadyFor(from, through, UsualJourneyPercent, daysAhead, away: true);

    /// <summary>Days before which the bond has to come off.</summary>
    /// <param name="daysAhead">A rebond that would fall closer before them than this is not made: the take-down takes its place.</param>
    /// <exception cref="ArgumentOutOfRangeException">It ends before it begins, or a number is out of its range.</exception>
    public static LifeEventDays OffBefore(LocalDate from, LocalDate through, int daysAhead = UsualDaysAhead, bool away = false) =>
        new(from, through, daysAhead, away, 0) { IsTakeDown = true };

    internal bool Covers(int day) => CivilDayNumber.Number(From) <= day && day <= CivilDayNumber.Number(Through);
}
