using NodaTime;

namespace HairClinic.Domain.Chairs;

/// <summary>When a person works and when their hands are taken. Intervals are bounded and half-open.</summary>
/// <param name="Skills">What they may do alone.</param>
public sealed record PersonTime(Guid PersonId, IReadOnlyList<Interval> Working, IReadOnlyList<Interval> Busy, IReadOnlySet<Guid> Skills);
