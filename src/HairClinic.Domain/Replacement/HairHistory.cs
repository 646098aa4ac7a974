using NodaTime;

namespace HairClinic.Domain.Replacement;

/// <summary>What was on one client's head and in house for them, day by day.</summary>
/// <param name="Bonds">From application to removal; null while it is on the head. Both days count as worn.</param>
/// <param name="LeftOn">The day they stopped being a client.</param>
public sealed record HairHistory(
    IReadOnlyList<(LocalDate AppliedOn, LocalDate? RemovedOn)> Bonds,
    IReadOnlyList<UnitHistory> Units,
    LocalDate? LeftOn
);
