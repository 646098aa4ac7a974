using NodaTime;

namespace HairClinic.Domain.Chairs;

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
