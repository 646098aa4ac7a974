namespace HairClinic.Domain.Bonding;

/// <summary>One product as it was used: which, from which lot, in how many coats.</summary>
public sealed record ProductUse(Guid ProductId, Guid? LotId, int? Coats);
