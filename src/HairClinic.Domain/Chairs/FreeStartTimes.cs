namespace HairClinic.Domain.Chairs;

/// <summary>The starts at which one chair, one person, or the client, is free for every stretch of a service that needs it.</summary>
/// <remarks>
/// A stretch [f, t) of a visit starting at s meets a busy time [b, e) exactly when b − t &lt; s &lt; e − f. All such spans of
/// bad starts are joined once, so that each start asked about later costs one binary search.
/// </remarks>
internal sealed class FreeStartTimes
{
    private readonly IReadOnlyList<OffsetInterval> _blocks;
    private readonly Instant[] _badAfter;
    private readonly Instant[] _badUntil;
    private readonly HashSet<Instant> _ends;
    private readonly HashSet<Instant> _beginnings;

    private FreeStartTimes(IReadOnlyList<OffsetInterval> blocks, IReadOnlyCollection<Interval> busy, IReadOnlyCollection<Interval> day)
    {
        _blocks = blocks;
        var bad = new List<(Instant After, Instant Until)>(busy.Count * blocks.Count);
        foreach (var interval in busy)
        {
            foreach (var block in blocks)
                bad.Add((interval.Start - block.To, interval.End - block.From));
        }

        bad.Sort((left, right) => left.After.CompareTo(right.After));
        var joined = new List<(Instant After, Instant Until)>(bad.Count);
        foreach (var span in bad)
        {
            // Spans that only touch stay apart: the start between them is good.
            if (joined.Count > 0 && span.After < joined[^1].Until)
                joined[^1] = (joined[^1].After, Instant.Max(joined[^1].Until, span.Until));
            else
                joined.Add(span);
        }

        _badAfter = [.. joined.Select(span => span.After)];
        _badUntil = [.. joined.Select(span => span.Until)];
        _ends = [.. busy.Select(interval => interval.End), .. day.Select(interval => interval.Start)];
        _beginnings = [.. busy.Select(interval => interval.Start), .. day.Select(interval => interval.End)];
    }

    public static FreeStartTimes OfChair(SlotQuery question, ChairBusyTimes chair, IReadOnlyList<Interval> open) =>
        new(question.Service.Chair, Intervals.Merged(chair.Busy), open);

    /// <summary>A client is busy from the first minute to the last, waits included.</summary>
    public static FreeStartTimes OfClient(SlotQuery question) =>
        new([new OffsetInterval(Duration.Zero, question.Service.Length)], Intervals.Merged(question.ClientBusy), []);

    public static FreeStartTimes OfPerson(SlotQuery question, PersonSchedule person)
    {
        var working = Intervals.Merged(person.Working);
        return new(question.Service.Hands, [.. Intervals.Merged(person.Busy.Concat(Between(question, working)))], working);
    }

    public bool CanStartAt(Instant start)
    {
        var index = Array.BinarySearch(_badAfter, start);
        // An exact hit is the open edge of that span, and spans before it end no later: the start is good.
        if (index >= 0)
            return true;
        index = ~index - 1;
        return index < 0 || start >= _badUntil[index];
    }

    /// <summary>Sides of the visit that border on nothing, 0 to 2.</summary>
    public int CountLooseEndsAt(Instant start)
    {
        if (_blocks.Count == 0)
            return 0;
        return (_ends.Contains(start + _blocks[0].From) ? 0 : 1) + (_beginnings.Contains(start + _blocks[^1].To) ? 0 : 1);
    }

    // Time off is as good as busy: from long enough before the window to long enough after it.
    private static IEnumerable<Interval> Between(SlotQuery question, List<Interval> working)
    {
        var since = question.From - question.Service.Length;
        var until = question.To + question.Service.Length;
        foreach (var interval in working)
        {
            if (interval.Start > since)
                yield return new(since, interval.Start);
            since = Instant.Max(since, interval.End);
        }

        if (since < until)
            yield return new(since, until);
    }
}

/// <summary>A chair and when it is taken. Intervals are bounded and half-open, in any order.</summary>
public sealed record ChairBusyTimes(Guid ChairId, IReadOnlyList<Interval> Busy);

/// <summary>Arithmetic on bounded, half-open intervals.</summary>
internal static class Intervals
{
    /// <summary>The same time in order, with touching and overlapping stretches joined and empty ones dropped.</summary>
    public static List<Interval> Merged(IEnumerable<Interval> intervals)
    {
        var sorted = intervals.Where(interval => interval.Start < interval.End).ToList();
        sorted.Sort((left, right) => left.Start.CompareTo(right.Start));
        var merged = new List<Interval>(sorted.Count);
        foreach (var interval in sorted)
        {
            if (merged.Count > 0 && interval.Start <= merged[^1].End)
                merged[^1] = new(merged[^1].Start, Instant.Max(merged[^1].End, interval.End));
            else
                merged.Add(interval);
        }

        return merged;
    }
}

/// <summary>When a person works and when their hands are taken. Intervals are bounded and half-open.</summary>
/// <param name="Skills">What they may do alone.</param>
public sealed record PersonSchedule(
    Guid PersonId,
    IReadOnlyList<Interval> Working,
    IReadOnlyList<Interval> Busy,
    IReadOnlySet<Guid> Skills
);
