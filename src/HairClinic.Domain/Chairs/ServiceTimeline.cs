namespace HairClinic.Domain.Chairs;

/// <summary>A service's segments laid end to end, as stretches during which the chair and the hands are taken.</summary>
/// <remarks>
/// A wait shorter than <see cref="ShortestUsableWait"/> is too short to start on a second client, so the
/// stylist stays; a longer one gives the hands back, never the chair.
/// </remarks>
public sealed class ServiceTimeline
{
    /// <summary>Waits from this length free the hands (common practice, no source; a practice edits it).</summary>
    public static readonly Duration UsualShortestUsableWait = Duration.FromMinutes(10);

    /// <param name="segments">In order, at least one.</param>
    /// <param name="shortestUsableWait">The practice's own; the usual when left out.</param>
    /// <exception cref="ArgumentException">There is no segment.</exception>
    public ServiceTimeline(IReadOnlyList<ServiceSegment> segments, Duration? shortestUsableWait = null)
    {
        if (segments.Count == 0)
            throw new ArgumentException("A service has at least one segment.", nameof(segments));
        ShortestUsableWait = shortestUsableWait ?? UsualShortestUsableWait;
        var chair = new List<OffsetInterval>();
        var hands = new List<OffsetInterval>();
        foreach (var segment in segments)
        {
            var length = Duration.FromMinutes(segment.Minutes);
            var block = new OffsetInterval(Length, Length + length);
            if (segment.Kind.TakesChair())
                Append(chair, block);
            if (segment.Kind.TakesHands(length, ShortestUsableWait))
                Append(hands, block);
            Length = block.To;
        }

        (Chair, Hands) = (chair, hands);
    }

    public Duration ShortestUsableWait { get; }

    /// <summary>From the first minute to the last.</summary>
    public Duration Length { get; }

    /// <summary>When the chair is taken, in order, apart from each other.</summary>
    public IReadOnlyList<OffsetInterval> Chair { get; }

    /// <summary>When the stylist is taken, in order, apart from each other.</summary>
    public IReadOnlyList<OffsetInterval> Hands { get; }

    private static void Append(List<OffsetInterval> blocks, OffsetInterval block)
    {
        if (blocks.Count > 0 && blocks[^1].To == block.From)
            blocks[^1] = new(blocks[^1].From, block.To);
        else
            blocks.Add(block);
    }
}

/// <summary>One stretch of a service.</summary>
public sealed record ServiceSegment
{
    public const int LongestMinutes = 24 * 60;

    /// <param name="kind">What it keeps busy.</param>
    /// <param name="minutes">1 to 1,440.</param>
    /// <exception cref="ArgumentOutOfRangeException">No minutes, or more than a day.</exception>
    public ServiceSegment(SegmentKind kind, int minutes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minutes, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(minutes, LongestMinutes);
        (Kind, Minutes) = (kind, minutes);
    }

    public SegmentKind Kind { get; }

    public int Minutes { get; }
}

/// <summary>A stretch of a service, counted from the moment it starts; the end is not part of it.</summary>
public readonly record struct OffsetInterval(Duration From, Duration To);
