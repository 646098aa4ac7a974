namespace HairClinic.Domain.Wear.Curves;

/// <summary>What was seen of a group, and what would be expected if all groups lasted alike.</summary>
public readonly record struct LogRankGroup(double Count, double Observed, double Expected);
