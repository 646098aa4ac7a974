using NodaTime;

namespace HairClinic.Domain.Chairs;

/// <summary>A stretch of a service, counted from the moment it starts; the end is not part of it.</summary>
public readonly record struct TimeBlock(Duration From, Duration To)
{
    public Interval StartingAt(Instant start) => new(start + From, start + To);
}
