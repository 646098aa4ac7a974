using HairClinic.Domain.Wear.Watch;
using NodaTime;

namespace HairClinic.Benchmarks.Watch;

/// <summary>The alarms that one way of watching raises in one practice; a false one is dismissed on its day.</summary>
/// <param name="limit">Given the units of a year.</param>
/// <param name="isTrue">Whether a stream that is named on a day has indeed got worse.</param>
internal sealed class WatchTrack(Func<double, double> limit, Func<int, int, bool> isTrue)
{
    private static readonly LocalDate Start = new(2027, 3, 1);
    private readonly List<WatchAlarm> _alarms = [];

    public int FalseAlarms { get; private set; }

    /// <summary>The day on which what got worse was named.</summary>
    public int? NamedOn { get; private set; }

    /// <summary>The first place a decline may begin at; null where nothing is asked.</summary>
    public int? From(StoryUnit[] units, int stream, int day) =>
        WatchAlarmRule.MayBeginFrom(_alarms.Where(a => a.StreamId == IdOf(stream)), DateOf(day)) is { } from
            ? WatchAlarmRule.FirstPlace(Deliveries(units), from)
            : null;

    public void Look(StoryUnit[] units, int stream, int day, double[] increments, double unitsPerYear)
    {
        var own = new WatchedStream(WatchedStreamKind.Workshop, IdOf(stream));
        if (WatchAlarmRule.MayBeginFrom(_alarms.Where(a => a.StreamId == own.Id), DateOf(day)) is not { } from)
            return;
        if (WatchAlarmRule.Raise(Guid.Empty, own, Deliveries(units), increments, from, limit(unitsPerYear), DateOf(day)) is not { } alarm)
            return;
        _alarms.Add(alarm);
        if (isTrue(stream, day))
        {
            NamedOn ??= day;
            return;
        }
        FalseAlarms++;
        alarm.Dismiss(own.Id, DateOf(day));
    }

    private static LocalDate[] Deliveries(StoryUnit[] units) => Array.ConvertAll(units, unit => DateOf(unit.DeliveredOn));

    private static Guid IdOf(int stream) => new(stream, 0, 0, new byte[8]);

    private static LocalDate DateOf(int day) => Start.PlusDays(day);
}
