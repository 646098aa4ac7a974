using NodaTime;

namespace HairClinic.Domain.Chairs;

/// <summary>One stretch of a salon's week on the wall clock. Midnight as the end means the end of that day.</summary>
public sealed record WeeklyHours
{
    /// <exception cref="ArgumentException">It closes at or before it opens, or has no weekday.</exception>
    public WeeklyHours(IsoDayOfWeek weekday, LocalTime opens, LocalTime closes)
    {
        if (weekday is < IsoDayOfWeek.Monday or > IsoDayOfWeek.Sunday)
            throw new ArgumentException("Opening hours belong to a weekday.", nameof(weekday));
        if (closes <= opens && closes != LocalTime.Midnight)
            throw new ArgumentException("A salon closes after it opens, on the same day.", nameof(closes));
        (Weekday, Opens, Closes) = (weekday, opens, closes);
    }

    public IsoDayOfWeek Weekday { get; }

    public LocalTime Opens { get; }

    public LocalTime Closes { get; }
}
