using HairClinic.Domain.Bonding;
using NodaTime;

namespace HairClinic.Domain.Visits;

/// <summary>What was found when the old bond came off.</summary>
/// <param name="FoundLifted">An edge was up already.</param>
/// <param name="LiftedOn">The day the client noticed it; always asked.</param>
public sealed record TakeDown(InspectionGrades Grades, bool FoundLifted, LocalDate? LiftedOn, LiftZone? LiftZone, RemovalReason Because);
