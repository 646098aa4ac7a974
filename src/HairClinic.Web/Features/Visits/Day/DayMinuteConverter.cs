namespace HairClinic.Web.Features.Visits;

/// <summary>
/// A civil day as a line of minutes that really pass, from its first moment: 1,380, 1,440 or 1,500 of them where an hour is
/// skipped or repeated. Only the words beside the line are the wall clock's.
/// </summary>
public sealed class DayMinuteConverter(LocalDate day, DateTimeZone zone)
{
    private readonly Instant _begins = zone.AtStartOfDay(day).ToInstant();

    /// <summary>How many minutes this day has.</summary>
    public int Length => ToMinute(zone.AtStartOfDay(day.PlusDays(1)).ToInstant());

    public int ToMinute(Instant instant) => (int)Math.Floor((instant - _begins).TotalMinutes);

    public Instant InstantAt(int minute) => _begins + Duration.FromMinutes(minute);

    public LocalTime WallAt(int minute) => InstantAt(minute).InZone(zone).TimeOfDay;
}
