namespace HairClinic.Domain.Wear;

/// <summary>A rebond's target as the practice's own records have it.</summary>
/// <param name="Days">After application; at least 1.</param>
/// <param name="OwnBonds">Bonds of this client behind it; 0 where only other clients' are.</param>
/// <param name="UnknownDays">What it would be for a client of whom nothing is known.</param>
public readonly record struct LearntTarget(int Days, int OwnBonds, int UnknownDays);
