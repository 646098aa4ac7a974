using NodaTime;

namespace HairClinic.Domain.Bonding;

/// <summary>
/// A lift as it became known. The day may be unknown: then it lies after the last day the bond was
/// known to be sound and no later than the day it was reported.
/// </summary>
/// <param name="ReportedOn">The day someone told us, or the visit that found it.</param>
/// <param name="LiftedOn">The day it lifted, where the client noticed.</param>
/// <param name="Zone">Where the edge came up.</param>
/// <param name="SpotFixed">Put down again without a new bond; the hold still ended here.</param>
public sealed record Lift(LocalDate ReportedOn, LocalDate? LiftedOn, LiftZone? Zone, bool SpotFixed);
