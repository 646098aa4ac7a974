using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Clients;

/// <summary>What a rule says: this product or this purpose, in these days, is blocked or warned of.</summary>
public sealed record ClearanceFact(Guid? ProductId, ServicePurpose? Purpose, LocalDate From, LocalDate? Until, ClearanceKind Kind);
