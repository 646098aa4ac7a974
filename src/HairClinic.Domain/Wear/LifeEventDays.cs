namespace HairClinic.Domain.Wear;

/// <summary>A wedding, journey or operation the bond must be ready for, on which the client may be away.</summary>
/// <remarks>Both ends are included. What the event is stays with the client: the rule needs only its days.</remarks>
public readonly record struct LifeEventDays
{
    /// <summary>Days between a rebond and the event it makes ready for (common practice, no source).</summary>
    public const int UsualDaysAhead = 5;

    private LifeEventDays(LocalDate from, LocalDate through, int daysAhead, bool isAway)
    {
        if (through < from)
            throw new ArgumentOutOfRangeException(nameof(through), "An event ends on or after the day it begins.");
        ArgumentOutOfRangeException.ThrowIfNegative(daysAhead);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(daysAhead, 60);
        (From, Through, DaysAhead, IsAway) = (from, through, daysAhead, isAway);
    }

    public LocalDate From { get; }

    public LocalDate Through { get; }

    /// <summary>A rebond pulled ahead of the event falls at least this many days before it; 0 to 60.</summary>
    public int DaysAhead { get; }

    /// <summary>The client cannot come on these days, so nothing falls due on them.</summary>
    public bool IsAway { get; }

    /// <summary>A day to be ready for, on which the client is within reach.</summary>
    public static LifeEventDays SingleDay(LocalDate day, int daysAhead = UsualDaysAhead) => new(day, day, daysAhead, false);

    /// <summary>Days to be ready for, on which the client cannot come.</summary>
    public static LifeEventDays Away(LocalDate from, LocalDate through, int daysAhead = UsualDaysAhead) =>
        new(from, through, daysAhead, true);

    internal bool Covers(int day) => CivilDayNumber.Number(From) <= day && day <= CivilDayNumber.Number(Through);
}
