namespace HairClinic.Domain.Replacement;

/// <summary>What a period says of one client.</summary>
/// <param name="DaysWatched">Days of the period on which they wore our hair or should have.</param>
/// <param name="HasLapsed">They wear nothing for so long that they are taken to have left.</param>
public sealed record ClientGaps(int DaysWatched, IReadOnlyList<Gap> Gaps, bool HasLapsed);
