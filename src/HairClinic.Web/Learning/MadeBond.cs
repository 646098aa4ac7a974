using HairClinic.Domain.Bonding;

namespace HairClinic.Web.Learning;

/// <summary>A bond with what it was made of: the unit's base, and the adhesive or tape with its lot.</summary>
public sealed record MadeBond(Bond Bond, Guid BaseMaterialId, Guid? AdhesiveId, Guid? LotId);
