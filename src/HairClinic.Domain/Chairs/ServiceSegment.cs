namespace HairClinic.Domain.Chairs;

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
