using HairClinic.Domain.Bonding;
using NodaTime;

namespace HairClinic.Domain.Visits;

/// <summary>What the edges of a bond looked like at a visit that left it on.</summary>
/// <param name="Up">An edge was up.</param>
/// <param name="LiftedOn">The day the client noticed it; null where not known.</param>
/// <param name="SpotFixed">It was put down again without a new bond.</param>
public sealed record EdgesSeen(bool Up, LocalDate? LiftedOn, LiftZone? Zone, bool SpotFixed)
{
    public static readonly EdgesSeen Sound = new(false, null, null, false);
}
