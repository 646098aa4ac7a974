using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>A stretch of a unit's life over which its covariates stood still.</summary>
/// <param name="Spell">Counted from the unit's first worn day, whenever the stretch began.</param>
/// <param name="Entered">Worn days at which the stretch began.</param>
/// <param name="Repaired">The covariate: 1 from the first repair on.</param>
public readonly record struct UnitStretch(Spell Spell, double Entered, double Repaired);
