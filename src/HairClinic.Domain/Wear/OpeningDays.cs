using NodaTime.TimeZones;

namespace HairClinic.Domain.Wear;

/// <summary>The civil days on which a salon receives clients.</summary>
/// <remarks>
/// A day is open when its weekday is, no closure covers it, and it exists in the salon's zone: zones that crossed
/// the date line skipped a whole day, and nobody can be due on it. The skipped days are found once, here, so that
/// asking is arithmetic. Closures include both their ends. Make one per salon and keep it for the batch.
/// </remarks>
public sealed class OpeningDays
{
    // Older than any practice's book, and later than any zone's announced changes: yearly rules never skip a day.
    private static readonly Instant SkipsFrom = Instant.FromUtc(1970, 1, 1, 0, 0);
    private static readonly Instant SkipsTo = Instant.FromUtc(2050, 1, 1, 0, 0);

    private readonly WeekdaySet _weekdays;
    private readonly int[] _skipped;
    private readonly int[] _closedFrom;
    private readonly int[] _closedThrough;

    /// <param name="weekdays">Weekdays with opening hours; empty means the salon never opens.</param>
    /// <param name="closures">Closed stretches, in any order; they may overlap.</param>
    /// <param name="zone">The salon's zone.</param>
    public OpeningDays(WeekdaySet weekdays, IEnumerable<DateInterval> closures, DateTimeZone zone)
    {
        _weekdays = weekdays;
        _skipped = [.. SkippedDays(zone)];
        var closed = closures
            .Select(closure => (First: CivilDayNumber.Number(closure.Start), Last: CivilDayNumber.Number(closure.End)))
            .Concat(_skipped.Select(day => (First: day, Last: day)))
            .OrderBy(stretch => stretch.First)
            .ToList();
        // Making each end the latest so far leaves one stretch to look at per question, overlaps or not.
        _closedFrom = new int[closed.Count];
        _closedThrough = new int[closed.Count];
        var latest = -1;
        for (var index = 0; index < closed.Count; index++)
        {
            latest = Math.Max(latest, closed[index].Last);
            _closedFrom[index] = closed[index].First;
            _closedThrough[index] = latest;
        }
    }

    public bool IsOpen(LocalDate day) => IsOpen(CivilDayNumber.Number(day));

    /// <summary>The open day within [first, last] nearest to the one wanted, the earlier on a tie.</summary>
    /// <returns>Nothing when no day in the stretch is open.</returns>
    public LocalDate? Nearest(LocalDate wanted, LocalDate first, LocalDate last)
    {
        var (middle, low, high) = (CivilDayNumber.Number(wanted), CivilDayNumber.Number(first), CivilDayNumber.Number(last));
        var reach = Math.Max(middle - low, high - middle);
        for (var distance = 0; distance <= reach; distance++)
        {
            if (middle - distance >= low && middle - distance <= high && IsOpen(middle - distance))
                return CivilDayNumber.Date(middle - distance);
            if (middle + distance >= low && middle + distance <= high && IsOpen(middle + distance))
                return CivilDayNumber.Date(middle + distance);
        }

        return null;
    }

    internal bool IsOpen(int day) => (_weekdays.Bits & CivilDayNumber.WeekdayBit(day)) != 0 && (_closedFrom.Length == 0 || !IsClosed(day));

    /// <summary>The day that many existing days later.</summary>
    internal int AddCalendarDays(int day, int days)
    {
        var later = day + days;
        foreach (var gone in _skipped)
        {
            if (gone > day && gone <= later)
                later++;
        }

        return later;
    }

    private bool IsClosed(int day)
    {
        var index = Array.BinarySearch(_closedFrom, day);
        if (index < 0)
            index = ~index - 1;
        return index >= 0 && day <= _closedThrough[index];
    }

    private static IEnumerable<int> SkippedDays(DateTimeZone zone)
    {
        ZoneInterval? before = null;
        foreach (var after in zone.GetZoneIntervals(SkipsFrom, SkipsTo))
        {
            if (before is not null && after.WallOffset.Ticks - before.WallOffset.Ticks >= NodaConstants.TicksPerDay)
            {
                var firstWhole = before.IsoLocalEnd.PlusTicks(NodaConstants.TicksPerDay - 1).Date;
                for (var day = firstWhole; day.PlusDays(1).AtMidnight() <= after.IsoLocalStart; day = day.PlusDays(1))
                    yield return CivilDayNumber.Number(day);
            }

            before = after;
        }
    }
}
