namespace HairClinic.Domain.Wear.Watch;

/// <summary>From where on a stream may be found to have got worse, given what was found before, and whether it is.</summary>
public static class WatchAlarmRule
{
    /// <summary>The first delivery at which a new decline may begin; null while an alarm is open.</summary>
    /// <param name="earlier">The stream's own alarms.</param>
    /// <remarks>
    /// No further back than <see cref="StreamWatch.WatchedDays"/>. What an alarm named is not named again: after one that was none, what was
    /// delivered later counts; after one that is over, what came after its last unit.
    /// </remarks>
    public static LocalDate? MayBeginFrom(IEnumerable<WatchAlarm> earlier, LocalDate today)
    {
        var from = today.PlusDays(-StreamWatch.WatchedDays);
        foreach (var alarm in earlier)
        {
            if (alarm.IsOpen)
                return null;
            var last = alarm.End == WatchAlarmEnd.FalseAlarm ? alarm.ClosedOn!.Value : alarm.CohortThrough!.Value;
            from = LocalDate.Max(from, last.PlusDays(1));
        }
        return from;
    }

    /// <summary>The place of the first delivery on that day or later; the count of all where there is none.</summary>
    /// <param name="deliveries">In order.</param>
    public static int FirstPlace(IReadOnlyList<LocalDate> deliveries, LocalDate from)
    {
        var place = 0;
        while (place < deliveries.Count && deliveries[place] < from)
            place++;
        return place;
    }

    /// <returns>Null where the stream is not above the limit.</returns>
    /// <param name="increments">Of all the stream's units, in the order of their deliveries.</param>
    /// <param name="from">As <see cref="MayBeginFrom"/> says.</param>
    public static WatchAlarm? Raise(
        Guid id,
        WatchedStream stream,
        IReadOnlyList<LocalDate> deliveries,
        ReadOnlySpan<double> increments,
        LocalDate from,
        double limit,
        LocalDate today
    )
    {
        var first = FirstPlace(deliveries, from);
        var state = StreamWatch.Evaluate(increments[first..]);
        if (!state.IsAbove(limit))
            return null;
        var place = first + state.FirstOfCohort!.Value;
        return new WatchAlarm(id, stream, deliveries[place], deliveries.Count - place, today, state.Statistic, limit);
    }
}
