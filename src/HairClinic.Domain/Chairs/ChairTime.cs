using NodaTime;

namespace HairClinic.Domain.Chairs;

/// <summary>A chair and when it is taken. Intervals are bounded and half-open, in any order.</summary>
public sealed record ChairTime(Guid ChairId, IReadOnlyList<Interval> Busy);
