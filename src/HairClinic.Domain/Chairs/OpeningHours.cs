using HairClinic.Domain.Wear;
using NodaTime.TimeZones;

namespace HairClinic.Domain.Chairs;

/// <summary>A salon's hours on the wall clock, and the instants they fall on.</summary>
/// <remarks>
/// Where the clocks skip, opening or closing inside the gap happens at its end; a stretch that lies wholly
/// inside it, or on a day the zone skipped, does not happen. Where the clocks repeat, the salon opens at the first and
/// closes at the second occurrence of the time. Closures include both their ends.
/// </remarks>
public sealed class OpeningHours
{
    private static readonly ZoneLocalMappingResolver Opening = Resolvers.CreateMappingResolver(
        Resolvers.ReturnEarlier,
        Resolvers.ReturnStartOfIntervalAfter
    );

    private static readonly ZoneLocalMappingResolver Closing = Resolvers.CreateMappingResolver(
        Resolvers.ReturnLater,
        Resolvers.ReturnStartOfIntervalAfter
    );

    private readonly ILookup<IsoDayOfWeek, WeekdayTimeRange> _week;
    private readonly DateInterval[] _closures;
    private readonly DateTimeZone _zone;

    public OpeningHours(IEnumerable<WeekdayTimeRange> week, IEnumerable<DateInterval> closures, DateTimeZone zone)
    {
        _week = week.OrderBy(hours => hours.Opens).ToLookup(hours => hours.Weekday);
        _closures = [.. closures];
        _zone = zone;
        Days = new(WeekdaySet.Of([.. _week.Select(day => day.Key)]), _closures, zone);
    }

    /// <summary>The days with any opening hours, for rules that think in days.</summary>
    public OpeningDays Days { get; }

    /// <summary>When the salon is open on a day, in order; empty when it is closed.</summary>
    public IReadOnlyList<Interval> On(LocalDate day)
    {
        if (_closures.Any(closure => closure.Contains(day)))
            return [];
        return Intervals.Merged(
            _week[day.DayOfWeek]
                .Select(hours => (Opens: At(day, hours.Opens, Opening), Closes: ClosingOf(day, hours.Closes)))
                .Where(stretch => stretch.Opens < stretch.Closes)
                .Select(stretch => new Interval(stretch.Opens, stretch.Closes))
        );
    }

    /// <summary>The whole opening stretches that touch [from, to), in order.</summary>
    public IReadOnlyList<Interval> Between(Instant from, Instant to)
    {
        var stretches = new List<Interval>();
        var last = to.InZone(_zone).Date;
        for (var day = from.InZone(_zone).Date.PlusDays(-1); day <= last; day = day.PlusDays(1))
            stretches.AddRange(On(day).Where(stretch => stretch.End > from && stretch.Start < to));
        return Intervals.Merged(stretches);
    }

    private Instant ClosingOf(LocalDate day, LocalTime closes) =>
        closes == LocalTime.Midnight ? At(day.PlusDays(1), LocalTime.Midnight, Opening) : At(day, closes, Closing);

    private Instant At(LocalDate day, LocalTime time, ZoneLocalMappingResolver resolver) =>
        (day + time).InZone(_zone, resolver).ToInstant();
}

/// <summary>One stretch of a salon's week on the wall clock. Midnight as the end means the end of that day.</summary>
public sealed record WeekdayTimeRange
{
    /// <exception cref="ArgumentException">It closes at or before it opens, or has no weekday.</exception>
    public WeekdayTimeRange(IsoDayOfWeek weekday, LocalTime opens, LocalTime closes)
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

/// <summary>How many minutes there are in each of the weeks ahead.</summary>
public static class WeekMinutesCalculator
{
    /// <summary>Minutes the hours hold in each week of seven days; a night on which the clocks change counts as it is.</summary>
    /// <param name="from">The first day of the first week.</param>
    public static double[] OpenMinutesPerWeek(OpeningHours hours, LocalDate from, int weeks)
    {
        var minutes = new double[weeks];
        for (var day = 0; day < 7 * weeks; day++)
            minutes[day / 7] += hours.On(from.PlusDays(day)).Sum(stretch => stretch.Duration.TotalMinutes);
        return minutes;
    }
}
