namespace HairClinic.Domain.Wear;

/// <summary>Looks for days on which this client can come to this salon, and remembers an absence that stood in the way.</summary>
internal ref struct DaySearch(OpeningDays opening, ReadOnlySpan<ClientEvent> events)
{
    public const int NoDay = int.MinValue;

    private readonly ReadOnlySpan<ClientEvent> _events = events;

    /// <summary>Place, among the events, of the absence that ruled out the first day otherwise right; −1 if none did.</summary>
    public int Absence { get; private set; } = -1;

    /// <summary>The day inside [first, last] nearest to a target, within reach, the earlier on a tie.</summary>
    public int Nearest(int target, int first, int last, int reach, WeekdaySet weekdays)
    {
        for (var distance = 0; distance <= reach; distance++)
        {
            if (target - distance >= first && Suits(target - distance, weekdays))
                return target - distance;
            if (target + distance <= last && Suits(target + distance, weekdays))
                return target + distance;
        }

        return NoDay;
    }

    /// <summary>The last day before another, not before <paramref name="first"/>.</summary>
    public int LastBefore(int day, int first)
    {
        for (var earlier = day - 1; earlier >= first; earlier--)
        {
            if (Suits(earlier, WeekdaySet.Every))
                return earlier;
        }

        return NoDay;
    }

    private bool Suits(int day, WeekdaySet weekdays) =>
        (weekdays.Bits & CivilDay.WeekdayBit(day)) != 0 && opening.IsOpen(day) && !IsAway(day);

    private bool IsAway(int day)
    {
        for (var index = 0; index < _events.Length; index++)
        {
            if (!_events[index].IsAway || !_events[index].Covers(day))
                continue;
            if (Absence < 0)
                Absence = index;
            return true;
        }

        return false;
    }
}
